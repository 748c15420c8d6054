/* Sound similarity against phoneme codes of a register: behind a bound that forgets the order of the phonemes, or of all
   of them, with how many phonemes are equal. Equal to the last bit to register/phoneme_search.py. */

#include <string.h>

#include "phonemes.h"

enum { FEW = 256 };

/* _Arrays in phoneme_search.py: the distinct codes, in order of their weight. */
typedef struct {
    const uint8_t *blob, *weights;
    const uint32_t *start;
    const uint16_t *whole, *present; /* `present` is a set of phonemes, in three columns of `count` */
    const uint8_t *syllables;
    int64_t count, size; /* `size` of the blob */
} CodeArrays;

typedef struct {
    const PhonemeTable *table;
    const CodeArrays *arrays;
    Reading *readings;
    int64_t reading_count;
    Other other;
    int64_t room; /* for the phonemes of the other code */
    int error;
} Search;

static void make_room(Search *search, int64_t phonemes)
{
    if (phonemes <= search->room)
        return;
    free(search->other.aside);
    search->room = 2 * phonemes;
    search->other.aside = malloc((2 * (size_t)search->room + 1) * sizeof *search->other.aside);
    if (!search->other.aside) {
        search->room = 0;
        search->error = NO_MEMORY;
        return;
    }
    search->other.row = search->other.aside + search->room;
}

/* `codes` are the readings, each of at most LONGEST_QUERY phonemes and ended by a zero byte; `prepare` makes each
   ready. */
static void begin(Search *search, const PhonemeTable *table, const CodeArrays *arrays, const uint8_t *codes,
                  int64_t readings, void (*prepare)(const PhonemeTable *, const uint8_t *, int64_t, Reading *))
{
    memset(search, 0, sizeof *search);
    search->table = table;
    search->arrays = arrays;
    search->reading_count = readings;
    search->readings = aligned_alloc(64, ((size_t)readings * sizeof *search->readings + 63) / 64 * 64);
    if (!search->readings) {
        search->error = NO_MEMORY;
        return;
    }
    make_room(search, FEW);
    for (int64_t number = 0; number < readings; number++) {
        prepare(table, codes, (int64_t)strlen((const char *)codes), &search->readings[number]);
        codes += search->readings[number].size + 1;
    }
}

/* The greatest cost at which codes of so many syllables reach `least`. */
static void set_budgets(Search *search, double least)
{
    for (int64_t number = 0; number < search->reading_count && !search->error; number++) {
        Reading *reading = &search->readings[number];
        for (int64_t syllables = 0; syllables < BYTES; syllables++)
            reading->budget[syllables] = 100 * (1 - least / rhythm_factor(search->table, syllables, reading->syllables));
    }
}

static void end(Search *search)
{
    free(search->readings);
    free(search->other.aside);
}

/* The greatest cost at which a code reaches the similarity that `begin` was told. */
INLINE int64_t budget_of(const CodeArrays *arrays, const Reading *reading, int64_t place)
{
    return (int64_t)(reading->budget[arrays->syllables[place]] * (double)(arrays->whole[place] + reading->whole) +
                     1e-6);
}

INLINE void phoneme_set(const CodeArrays *arrays, int64_t place, uint8_t *set)
{
    for (int column = 0; column < COLUMNS; column += 2) {
        uint16_t present = arrays->present[(column / 2) * arrays->count + place];
        set[column] = (uint8_t)present;
        set[column + 1] = (uint8_t)(present >> 8);
    }
}

/* The part of an alignment's cost that falls to the reading in any order: each phoneme is set against another, or
   against nothing. Fills in `reading_aside`. */
INLINE int64_t least_cost_of_reading(Search *search, const Reading *reading, const uint8_t *set)
{
    int64_t cost = 0;
    int8_t *aside = search->other.reading_aside;
    for (int64_t group = 0; group * GROUP < reading->kinds; group++) {
        Differences nearest = reading->nearest_in_set[group][0][set[0]];
        for (int column = 1; column < COLUMNS; column++) {
            Differences here = reading->nearest_in_set[group][column][set[column]];
            Differences less = here < nearest;
            nearest = (here & less) | (nearest & ~less);
        }
        memcpy(aside + group * GROUP, &nearest, GROUP);
        for (int64_t kind = group * GROUP; kind < reading->kinds && kind < (group + 1) * GROUP; kind++)
            cost += reading->kind_weight[kind] * aside[kind];
    }
    return cost;
}

/* The part that falls to the phonemes of a code. */
INLINE int64_t least_cost_of_code(const CodeArrays *arrays, const Reading *reading, int64_t place)
{
    int64_t cost = 0;
    for (int64_t at = arrays->start[place]; at < arrays->start[place + 1]; at++)
        cost += arrays->weights[at] * reading->nearest[arrays->blob[at]];
    return cost;
}

/* Whether there is a code at a place, within the arrays. */
INLINE int stands(Search *search, int64_t place)
{
    const CodeArrays *arrays = search->arrays;
    if (place < 0 || place >= arrays->count ||
        !within(arrays->start[place], arrays->start[place + 1], arrays->size, LONGEST_CODE))
        search->error = OUT_OF_BOUNDS;
    return !search->error;
}

/* Make a code the one to be aligned. The arrays hold no more of a weight or a count than fits them. */
INLINE void turn_to(Search *search, int64_t place)
{
    const CodeArrays *arrays = search->arrays;
    Other *other = &search->other;
    if (place < 0 || place >= arrays->count ||
        !within(arrays->start[place], arrays->start[place + 1], arrays->size, LONGEST_CODE)) {
        search->error = OUT_OF_BOUNDS;
        return;
    }
    other->code = arrays->blob + arrays->start[place];
    other->size = arrays->start[place + 1] - arrays->start[place];
    make_room(search, other->size);
    other->weight = arrays->weights + arrays->start[place];
    other->whole = arrays->whole[place];
    if (other->whole == UINT16_MAX) {
        other->whole = 0;
        for (int64_t at = 0; at < other->size; at++)
            other->whole += other->weight[at];
    }
    other->syllables = arrays->syllables[place];
    if (other->syllables == BYTES - 1)
        other->syllables = phoneme_syllables(search->table, other->code, other->size);
}

/* The similarity of one reading and a code, or 0 if it is below what `begin` was told. */
static double similarity(Search *search, const Reading *reading, int64_t place)
{
    const CodeArrays *arrays = search->arrays;
    uint8_t set[COLUMNS];
    if (!stands(search, place))
        return 0;
    int64_t most = budget_of(arrays, reading, place);
    phoneme_set(arrays, place, set);
    int64_t least = least_cost_of_reading(search, reading, set);
    if (least + least_cost_of_code(arrays, reading, place) > most)
        return 0;
    turn_to(search, place);
    if (search->error)
        return 0;
    Other *other = &search->other;
    for (int64_t at = 0; at < other->size; at++)
        least += other->aside[at] = other->weight[at] * reading->nearest[other->code[at]];
    if (least > most)
        return 0;
    int32_t more = phoneme_alignment_cost(reading, other, most - least < NEVER ? (int32_t)(most - least) : NEVER - 1);
    return more == NEVER ? 0 : similarity_at(search->table, reading, least + more, other->whole, other->syllables);
}

/* The codes of a word, as `ids` (`id_count` of them) lists them for `word_count` words. */
typedef struct {
    const uint32_t *ids;
    int64_t id_count;
    const uint32_t *start;
    int64_t word_count;
} Words;

INLINE int has_word(Search *search, const Words *words, int64_t word)
{
    if (word < 0 || word >= words->word_count ||
        !within(words->start[word], words->start[word + 1], words->id_count, words->id_count))
        search->error = OUT_OF_BOUNDS;
    return !search->error;
}

/* The similarity of the closest reading and the closest code of each word; values below `least` may come out as 0.
   Returns 0 or an error. */
int64_t phonemes_similarity_of(const PhonemeTable *table, const CodeArrays *arrays, const uint8_t *codes,
                               int64_t readings, const uint32_t *ids, int64_t id_count, const uint32_t *ids_start,
                               int64_t word_count, const int64_t *words, int64_t count, double least, double *values)
{
    Words all = {ids, id_count, ids_start, word_count};
    Search search;
    begin(&search, table, arrays, codes, readings, phoneme_reading);
    set_budgets(&search, least);
    for (int64_t at = 0; at < count && !search.error && has_word(&search, &all, words[at]); at++) {
        values[at] = 0;
        for (int64_t id = ids_start[words[at]]; id < ids_start[words[at] + 1]; id++)
            for (int64_t number = 0; number < readings; number++) {
                double value = similarity(&search, &search.readings[number], ids[id]);
                values[at] = value > values[at] ? value : values[at];
            }
    }
    end(&search);
    return search.error;
}

/* The same for an alignment of which no part of the cost is put aside. */
static void turn_to_plain(Search *search, int64_t place)
{
    turn_to(search, place);
    if (!search->error)
        memset(search->other.aside, 0, (size_t)search->other.size * sizeof *search->other.aside);
}

/* The similarity of a reading, made ready as a plain one, and the code that was turned to; 0 if it is below `least`. */
INLINE double plain_similarity(const Search *search, const Reading *reading, double least)
{
    const Other *other = &search->other;
    double budget = 100 * (1 - least / rhythm_factor(search->table, other->syllables, reading->syllables));
    budget = budget * (double)(other->whole + reading->whole) + 1e-6;
    int32_t cost = phoneme_alignment_cost(reading, other, budget < NEVER ? (int32_t)budget : NEVER - 1);
    return cost == NEVER ? 0 : similarity_at(search->table, reading, cost, other->whole, other->syllables);
}

/* The share of equal phonemes: one less the edit distance over the longer length, with the places of each phoneme of
   the reading as bits (H. Hyyro, "A bit-vector algorithm for computing Levenshtein and Damerau edit distances", 2003). */
INLINE double share_of_equal(const Reading *reading, const uint64_t *places, const Other *other)
{
    uint64_t more = ~0ULL, less = 0, last = reading->size ? 1ULL << (reading->size - 1) : 0;
    int64_t distance = reading->size ? reading->size : other->size;
    for (int64_t at = 0; at < other->size && reading->size; at++) {
        uint64_t match = places[other->code[at]];
        uint64_t diagonal = (((match & more) + more) ^ more) | match | less;
        uint64_t up = less | ~(diagonal | more), down = diagonal & more;
        distance += (up & last) != 0;
        distance -= (down & last) != 0;
        up = (up << 1) | 1;
        more = (down << 1) | ~(diagonal | up);
        less = up & diagonal;
    }
    int64_t longer = reading->size > other->size ? reading->size : other->size;
    return longer ? 1.0 - (double)distance / (double)longer : 1.0;
}

/* closeness.sound.sound_measures of the readings and each word: `articulation` the similarity of the two that are
   closest by it, `same` the share of equal phonemes of the two that have most. Words without codes keep what stands
   there. Returns 0 or an error. */
int64_t phonemes_sound_measures(const PhonemeTable *table, const CodeArrays *arrays, const uint8_t *codes,
                                int64_t readings, const uint32_t *ids, int64_t id_count, const uint32_t *ids_start,
                                int64_t word_count, const int64_t *words, int64_t count, double *articulation,
                                double *same)
{
    Words all = {ids, id_count, ids_start, word_count};
    Search search;
    begin(&search, table, arrays, codes, readings, phoneme_plain_reading);
    uint64_t(*places)[BYTES] = calloc((size_t)readings, sizeof *places);
    if (!places)
        search.error = NO_MEMORY;
    for (int64_t number = 0; number < readings && !search.error; number++)
        for (int64_t at = 0; at < search.readings[number].size; at++)
            places[number][search.readings[number].code[at]] |= 1ULL << at;
    for (int64_t at = 0; at < count && !search.error && has_word(&search, &all, words[at]); at++) {
        int64_t first = ids_start[words[at]], after = ids_start[words[at] + 1], likeliest = 0;
        if (first < after)
            articulation[at] = same[at] = 0;
        for (int64_t pair = 0; pair < (after - first) * readings && !search.error; pair++) {
            if (pair % readings == 0)
                turn_to_plain(&search, ids[first + pair / readings]);
            double value = search.error ? 0 : share_of_equal(&search.readings[pair % readings], places[pair % readings], &search.other);
            if (value > same[at]) {
                same[at] = value;
                likeliest = pair;
            }
        }
        /* The two that share most first: the others then need not be aligned to their end. */
        for (int64_t pair = -1; pair < (after - first) * readings && !search.error; pair++) {
            int64_t here = pair < 0 ? likeliest : pair;
            if (first == after || pair == likeliest)
                continue;
            if (pair <= 0 || pair % readings == 0 || pair == likeliest + 1)
                turn_to_plain(&search, ids[first + here / readings]);
            double value = search.error ? 0 : plain_similarity(&search, &search.readings[here % readings], articulation[at]);
            articulation[at] = value > articulation[at] ? value : articulation[at];
        }
    }
    free(places);
    end(&search);
    return search.error;
}
