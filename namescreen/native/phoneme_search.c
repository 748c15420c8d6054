/* Sound similarity against phoneme codes of a register, and how many phonemes are equal. Equal to the last bit to
   register/phoneme_search.py. */

#include <string.h>

#include "phonemes.h"

enum { FEW = 256 };

/* _Arrays in phoneme_search.py: the distinct codes, in order of their weight. */
typedef struct {
    const uint8_t *blob, *weights;
    const uint32_t *start;
    const uint16_t *whole;
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
    free(search->other.row);
    search->room = 2 * phonemes;
    search->other.row = malloc(((size_t)search->room + 1) * sizeof *search->other.row);
    if (!search->other.row) {
        search->room = 0;
        search->error = NO_MEMORY;
    }
}

/* `codes` are the readings, each of at most LONGEST_QUERY phonemes and ended by a zero byte. */
static void begin(Search *search, const PhonemeTable *table, const CodeArrays *arrays, const uint8_t *codes,
                  int64_t readings)
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
        phoneme_reading(table, codes, (int64_t)strlen((const char *)codes), &search->readings[number]);
        codes += search->readings[number].size + 1;
    }
}

static void end(Search *search)
{
    free(search->readings);
    free(search->other.row);
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

/* The similarity of a reading and the code that was turned to; 0 if it is below `least`. */
INLINE double similarity(const Search *search, const Reading *reading, double least)
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
    begin(&search, table, arrays, codes, readings);
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
                turn_to(&search, ids[first + pair / readings]);
            int64_t number = pair % readings;
            double value = search.error ? 0 : share_of_equal(&search.readings[number], places[number], &search.other);
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
                turn_to(&search, ids[first + here / readings]);
            double value = search.error ? 0 : similarity(&search, &search.readings[here % readings], articulation[at]);
            articulation[at] = value > articulation[at] ? value : articulation[at];
        }
    }
    free(places);
    end(&search);
    return search.error;
}
