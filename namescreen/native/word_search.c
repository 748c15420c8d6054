/* The words of a register that are likeliest to be like one word, by a rough measure of their letters and phonemes, and
   the ways to divide names that hold most of the words that are. Equal to register/word_search.py. */

#include <stdlib.h>
#include <string.h>

#include "kernel.h"

enum { READINGS = 4, LANE = 16, MOST_PHONEMES = LANE - 1, MOST_LETTERS = 64, WHOLE = 1000 };

/* _Array in word_search.py: strings, one after another. */
typedef struct {
    const uint8_t *blob;
    const uint32_t *start;
    int64_t count, size;
} Strings;

/* _Array in word_search.py too: lists of numbers. */
typedef struct {
    const uint32_t *values, *start;
    int64_t count, size;
} Lists;

/* _Query in word_search.py: a word and its readings, each of at most so many letters and phonemes, and what letters and
   sounds count, in thousandths. */
typedef struct {
    const uint8_t *letters, *phonemes; /* the readings one after another */
    const int64_t *sizes;              /* of the readings */
    int64_t size, readings, letter_share, sound_share;
} Query;

/* The places of each letter in the word as bits; those of each phoneme in the readings, which end at the last bit but one
   of a lane each, so that nothing is carried from one into the next. */
typedef struct {
    const Query *query;
    uint64_t letters[256], phonemes[256], all_letters, first, last, inside, sizes;
} Pattern;

typedef struct {
    const Strings *words, *codes;
    const Lists *codes_of_word;
    Pattern pattern;
} Search;

static void prepare(const Query *query, Pattern *pattern)
{
    const uint8_t *phoneme = query->phonemes;
    memset(pattern, 0, sizeof *pattern);
    pattern->query = query;
    for (int64_t at = 0; at < query->size; at++)
        pattern->letters[query->letters[at]] |= 1ULL << at;
    pattern->all_letters = query->size < MOST_LETTERS ? (1ULL << query->size) - 1 : ~0ULL;
    for (int64_t number = 0; number < query->readings; number++) {
        int64_t size = query->sizes[number], lane = LANE * number, start = lane + MOST_PHONEMES - size;
        for (int64_t at = 0; at < size; at++)
            pattern->phonemes[*phoneme++] |= 1ULL << (start + at);
        pattern->first |= 1ULL << start;
        pattern->last |= 1ULL << (lane + MOST_PHONEMES - 1);
        pattern->inside |= ((1ULL << size) - 1) << start;
        pattern->sizes |= (uint64_t)size << lane;
    }
}

INLINE int64_t least_of(int64_t one, int64_t other)
{
    return one < other ? one : other;
}

/* The letters in common, in their order, over the mean length (as in string_measures.c). */
INLINE int64_t letters_alike(const Pattern *pattern, const uint8_t *text, int64_t size)
{
    uint64_t unmet = ~0ULL;
    int64_t both = least_of(size, MOST_LETTERS) + pattern->query->size;
    for (const uint8_t *end = text + least_of(size, MOST_LETTERS); text < end; text++) {
        uint64_t met = unmet & pattern->letters[*text];
        unmet = (unmet + met) | (unmet - met);
    }
    return 2 * WHOLE * POPCOUNT(~unmet & pattern->all_letters) / (both ? both : 1);
}

/* The share of equal phonemes of a code and the reading that it shares most with: one less the edit distance over the
   longer length, of all readings at once, one in each lane (as in phoneme_search.c). */
INLINE int64_t sounds_alike(const Pattern *pattern, const uint8_t *code, int64_t size)
{
    const Query *query = pattern->query;
    uint64_t more = pattern->inside, less = 0, distances = pattern->sizes;
    int64_t best = 0;
    size = least_of(size, MOST_PHONEMES);
    for (int64_t at = 0; at < size; at++) {
        uint64_t match = pattern->phonemes[code[at]];
        uint64_t diagonal = (((match & more) + more) ^ more) | match | less;
        uint64_t up = less | ~(diagonal | more), down = diagonal & more;
        distances += (up & pattern->last) >> (MOST_PHONEMES - 1);
        distances -= (down & pattern->last) >> (MOST_PHONEMES - 1);
        up = (up << 1) | pattern->first;
        more = ((down << 1) | ~(diagonal | up)) & pattern->inside;
        less = up & diagonal & pattern->inside;
    }
    for (int64_t number = 0; number < query->readings; number++, distances >>= LANE) {
        int64_t longer = size > query->sizes[number] ? size : query->sizes[number];
        int64_t value = WHOLE - WHOLE * (int64_t)(distances & ((1 << LANE) - 1)) / (longer ? longer : 1);
        best = value > best ? value : best;
    }
    return best;
}

/* Whether a place has a string, or a list, within its array. */
INLINE int stands(const Strings *strings, int64_t place)
{
    return within(strings->start[place], strings->start[place + 1], strings->size, strings->size);
}

INLINE int listed(const Lists *lists, int64_t place)
{
    return within(lists->start[place], lists->start[place + 1], lists->size, lists->size);
}

/* How alike a word of the register and the word are, in thousandths; below 0 an error. */
INLINE int64_t estimate_of(const Search *search, int64_t word)
{
    const Pattern *pattern = &search->pattern;
    const Strings *words = search->words, *codes = search->codes;
    const Lists *lists = search->codes_of_word;
    if (!stands(words, word) || !listed(lists, word))
        return OUT_OF_BOUNDS;
    int64_t look = letters_alike(pattern, words->blob + words->start[word],
                                 (int64_t)words->start[word + 1] - words->start[word]);
    int64_t sound = 0, at = lists->start[word], end = lists->start[word + 1];
    if (at == end || !pattern->query->readings)
        sound = look;
    for (; at < end; at++) {
        int64_t code = lists->values[at];
        if (code >= codes->count || !stands(codes, code))
            return OUT_OF_BOUNDS;
        int64_t value = sounds_alike(pattern, codes->blob + codes->start[code],
                                     (int64_t)codes->start[code + 1] - codes->start[code]);
        sound = value > sound ? value : sound;
    }
    return (pattern->query->letter_share * look + pattern->query->sound_share * sound) / WHOLE;
}

#define FETCH(address) __builtin_prefetch(address)

/* Have what estimates need fetched from memory in time, one step further with each call for a word. */
INLINE void fetch_ahead(const Search *search, const int64_t *places, int64_t at, int64_t count)
{
    enum { AHEAD = 6 };
    const Strings *words = search->words, *codes = search->codes;
    const Lists *lists = search->codes_of_word;
    for (int64_t step = 4; step; step--) {
        int64_t place = at + step * AHEAD < count ? places[at + step * AHEAD] : -1;
        if (place < 0 || place >= words->count)
            continue;
        if (step == 4) {
            FETCH(words->start + place);
            FETCH(lists->start + place);
            continue;
        }
        int64_t first = lists->start[place], last = lists->start[place + 1];
        if (step == 3) {
            if (words->start[place] < words->size)
                FETCH(words->blob + words->start[place]);
            if (first < lists->size)
                FETCH(lists->values + first);
            continue;
        }
        for (int64_t each = first; each < last && each < lists->size && each < first + READINGS; each++) {
            int64_t code = lists->values[each];
            if (code >= codes->count)
                continue;
            if (step == 2)
                FETCH(codes->start + code);
            else if (codes->start[code] < codes->size)
                FETCH(codes->blob + codes->start[code]);
        }
    }
}

/* Estimate how alike some words of the register are to the one of the query, in thousandths. Returns 0 or an error. */
CLONES int64_t words_estimates(const Strings *words, const Strings *codes, const Lists *codes_of_word,
                               const Query *query, const int64_t *places, int64_t count, uint16_t *estimates)
{
    Search search = {words, codes, codes_of_word, {0}};
    if (query->readings > READINGS || query->size > MOST_LETTERS)
        return OUT_OF_BOUNDS;
    for (int64_t number = 0; number < query->readings; number++)
        if (query->sizes[number] > MOST_PHONEMES)
            return OUT_OF_BOUNDS;
    prepare(query, &search.pattern);
    for (int64_t at = 0; at < count; at++) {
        fetch_ahead(&search, places, at, count);
        int64_t value = places[at] < 0 || places[at] >= words->count ? OUT_OF_BOUNDS : estimate_of(&search, places[at]);
        if (value < 0)
            return value;
        estimates[at] = (uint16_t)value;
    }
    return 0;
}

/* Add up what some words add to the rows that hold them, and write down the rows with the greatest sums, at most
   `most`, none of them of a name that is left out. `sums` holds noughts for each row, before and after. Returns how many
   were written, or an error. */
int64_t words_held(const Lists *rows_of_word, const int64_t *words, const uint16_t *adds, int64_t count,
                   const uint32_t *row_name, int64_t row_count, const uint8_t *left_out, int64_t name_count,
                   int64_t most, uint16_t *sums, int64_t *held)
{
    enum { LEVELS = UINT16_MAX + 1 };
    int64_t room = 0, touched = 0, found = 0, result = 0, least = LEVELS;
    for (int64_t each = 0; each < count; each++) {
        if (words[each] < 0 || words[each] >= rows_of_word->count || !listed(rows_of_word, words[each]))
            return OUT_OF_BOUNDS;
        room += adds[each] ? (int64_t)rows_of_word->start[words[each] + 1] - rows_of_word->start[words[each]] : 0;
    }
    room = room < row_count ? room : row_count;
    uint32_t *rows = malloc((size_t)(room ? room : 1) * sizeof *rows);
    int64_t *reached = calloc(LEVELS, sizeof *reached);
    if (!rows || !reached)
        result = NO_MEMORY;
    for (int64_t each = 0; each < count && !result; each++)
        for (int64_t at = rows_of_word->start[words[each]]; adds[each] && at < rows_of_word->start[words[each] + 1]; at++) {
            uint32_t row = rows_of_word->values[at];
            if (row >= row_count || row_name[row] >= name_count) {
                result = OUT_OF_BOUNDS;
                break;
            }
            if (!sums[row]) {
                if (left_out && left_out[row_name[row]])
                    continue;
                rows[touched++] = row;
            }
            uint32_t sum = (uint32_t)sums[row] + adds[each];
            sums[row] = (uint16_t)(sum < LEVELS ? sum : LEVELS - 1);
        }
    for (int64_t at = 0; at < touched && !result; at++)
        reached[sums[rows[at]]]++;
    for (int64_t sum = 0; least > 1 && !result && sum + reached[least - 1] <= most; least--)
        sum += reached[least - 1];
    for (int64_t at = 0; at < touched && !result; at++)
        if (sums[rows[at]] >= least)
            held[found++] = rows[at];
    for (int64_t at = 0; at < touched; at++)
        sums[rows[at]] = 0;
    free(rows);
    free(reached);
    return result ? result : found;
}
