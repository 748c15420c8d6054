/* How alike strings look, by the million: the arithmetic of namescreen/closeness/appearance.py, one string after
   another, behind the bounds of namescreen/register/letters.py. Every sum is made in the order in which it is made
   there, so that the results are the same to the last bit. */

#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "kernel.h"

enum { PATTERN = 64, FIRST = 4, SHORTEST_INSIDE = 3, ASCII = 128, FEW = 256, BLOCK = 512 };

/* One side of a comparison: a string of at most PATTERN characters, and where each character stands in it. */
typedef struct {
    int64_t size;
    const uint32_t *text;
    uint64_t ascii[ASCII];
    int64_t others;
    uint32_t other[PATTERN];
    uint64_t other_at[PATTERN];
    uint64_t signature, first;
} Pattern;

/* The same as _Query in namescreen/native/strings.py. */
typedef struct {
    const uint32_t *text, *shape;
    int64_t size, shape_size;
    uint64_t signature, shape_signature, first, shape_first;
    double order, bonus, shape_only, inside, inside_start, inside_elsewhere, nearly;
    const double *gain; /* what is left of a gap after 0 to 4 shared first letters */
} Query;

/* The same as _Strings there. */
typedef struct {
    const uint8_t *blob;
    const uint32_t *start;
    const uint16_t *length, *shape_length;
    const uint64_t *signature, *shape_signature, *first, *shape_first;
    const uint32_t *merging;
    int64_t count, merging_count;
} Strings;

typedef struct {
    const Query *query;
    double by_size, by_both; /* 1 - order, and order */
    Pattern plain, shaped;
    uint32_t *text, *shape; /* room for the other string */
    int64_t room;
} Search;

static void pattern_of(Pattern *pattern, const uint32_t *text, int64_t size, uint64_t signature, uint64_t first)
{
    memset(pattern, 0, sizeof *pattern);
    pattern->text = text;
    pattern->size = size;
    pattern->signature = signature;
    pattern->first = first;
    for (int64_t at = 0; at < size; at++) {
        uint32_t letter = text[at];
        if (letter < ASCII) {
            pattern->ascii[letter] |= 1ULL << at;
            continue;
        }
        int64_t other = 0;
        while (other < pattern->others && pattern->other[other] != letter)
            other++;
        if (other == pattern->others)
            pattern->other[pattern->others++] = letter;
        pattern->other_at[other] |= 1ULL << at;
    }
}

static uint64_t where(const Pattern *pattern, uint32_t letter)
{
    if (letter < ASCII)
        return pattern->ascii[letter];
    for (int64_t other = 0; other < pattern->others; other++)
        if (pattern->other[other] == letter)
            return pattern->other_at[other];
    return 0;
}

/* The longest common subsequence, bit-parallel (H. Hyyrö, "Bit-parallel LCS-length computation revisited", 2004). */
INLINE int64_t shared_in_order(const Pattern *pattern, const uint32_t *text, int64_t size)
{
    uint64_t unmet = ~0ULL, all = pattern->size == PATTERN ? ~0ULL : (1ULL << pattern->size) - 1;
    for (int64_t at = 0; at < size; at++) {
        uint64_t met = unmet & where(pattern, text[at]);
        unmet = (unmet + met) | (unmet - met);
    }
    return COUNT(~unmet & all);
}

/* Restricted edit distance and longest common subsequence, bit-parallel (H. Hyyrö, "A bit-vector algorithm for
   computing Levenshtein and Damerau edit distances", 2003; "Bit-parallel LCS-length computation revisited", 2004). */
static double in_order(const Search *search, const Pattern *pattern, const uint32_t *text, int64_t size)
{
    int64_t longer = size > pattern->size ? size : pattern->size, both = size + pattern->size;
    double edits = 1.0, common = 1.0;
    if (pattern->size && size) {
        uint64_t plus = ~0ULL, minus = 0, diagonal = 0, before = 0, unmet = ~0ULL;
        uint64_t last = 1ULL << (pattern->size - 1);
        int64_t distance = pattern->size;
        for (int64_t at = 0; at < size; at++) {
            uint64_t here = where(pattern, text[at]);
            uint64_t swapped = ((~diagonal & here) << 1) & before;
            diagonal = (((here & plus) + plus) ^ plus) | here | minus | swapped;
            uint64_t rises = minus | ~(diagonal | plus), falls = diagonal & plus;
            distance += (rises & last) != 0;
            distance -= (falls & last) != 0;
            rises = (rises << 1) | 1;
            falls <<= 1;
            plus = falls | ~(diagonal | rises);
            minus = rises & diagonal;
            before = here;
            uint64_t met = unmet & here;
            unmet = (unmet + met) | (unmet - met);
        }
        uint64_t all = pattern->size == PATTERN ? ~0ULL : (1ULL << pattern->size) - 1;
        int64_t shared = COUNT(~unmet & all);
        edits = 1.0 - (double)distance / (double)longer;
        common = 1.0 - (double)(both - 2 * shared) / (double)both;
    } else if (both) {
        edits = common = 0.0;
    }
    double raw = search->by_size * edits + search->by_both * common;
    for (int64_t at = 0; at < FIRST && at < size && at < pattern->size && text[at] == pattern->text[at]; at++)
        raw += search->query->bonus * (1 - raw);
    return raw;
}

static int64_t decode(const uint8_t *from, const uint8_t *end, uint32_t *to)
{
    uint32_t *at = to;
    while (from < end) {
        uint32_t byte = *from++;
        if (byte >= 0x80) {
            int more = byte >= 0xF0 ? 3 : byte >= 0xE0 ? 2 : 1;
            byte &= 0x3F >> more;
            while (more-- && from < end)
                byte = byte << 6 | (*from++ & 0x3F);
        }
        *at++ = byte;
    }
    return at - to;
}

/* closeness.appearance.shaped: no stand-in begins or ends another pair, so one pass does what eight do there. */
static int64_t shape_of(const uint32_t *text, int64_t size, uint32_t *shape)
{
    int64_t length = 0;
    for (int64_t at = 0; at < size; at++) {
        uint32_t letter = text[at], next = at + 1 < size ? text[at + 1] : 0;
        switch (letter) {
        case 'r': if (next == 'n') letter = 'm', at++; break;
        case 'v': if (next == 'v') letter = 'w', at++; break;
        case 'c': if (next == 'l') letter = 'd', at++; break;
        case '0': letter = 'o'; break;
        case '1': case 'i': letter = 'l'; break;
        case '5': letter = 's'; break;
        case '8': letter = 'b'; break;
        }
        shape[length++] = letter;
    }
    return length;
}

static int stands_at(const uint32_t *short_one, int64_t short_size, const uint32_t *long_one, int64_t long_size)
{
    for (int64_t at = 0; at + short_size <= long_size; at++)
        if (!memcmp(long_one + at, short_one, (size_t)short_size * sizeof *short_one))
            return at ? 2 : 1;
    return 0;
}

static void make_room(Search *search, int64_t characters)
{
    if (characters <= search->room)
        return;
    free(search->text);
    search->room = 2 * characters;
    search->text = malloc(2 * (size_t)search->room * sizeof *search->text);
    if (!search->text)
        abort();
    search->shape = search->text + search->room;
}

static double alike(Search *search, const Strings *strings, int64_t place)
{
    const Query *query = search->query;
    const uint8_t *from = strings->blob + strings->start[place], *end = strings->blob + strings->start[place + 1];
    make_room(search, end - from);
    const uint32_t *text = search->text;
    int64_t size = decode(from, end, search->text);
    if (size == query->size && !memcmp(text, query->text, (size_t)size * sizeof *text))
        return 1.0;
    double raw = in_order(search, &search->plain, text, size);
    int64_t shape_size = shape_of(text, size, search->shape);
    double seen = query->shape_only * in_order(search, &search->shaped, search->shape, shape_size);
    raw = raw > seen ? raw : seen;
    int64_t shorter = size < query->size ? size : query->size, longer = size + query->size - shorter;
    if (shorter >= SHORTEST_INSIDE && query->inside + query->inside_start * (double)shorter / (double)longer > raw) {
        int ours = query->size <= size;
        int stands = ours ? stands_at(query->text, query->size, text, size) : stands_at(text, size, query->text, query->size);
        if (stands) {
            double share = stands == 1 ? query->inside_start : query->inside_elsewhere;
            double within = query->inside + share * (double)shorter / (double)longer;
            raw = raw > within ? raw : within;
        }
    }
    return raw < query->nearly ? raw : query->nearly;
}

/* The most that two strings can be alike by what either lacks and by their first letters. */
INLINE double most(const Search *search, const Pattern *pattern, uint64_t signature, uint64_t first, int64_t length,
                   const double *inside)
{
    int64_t size = pattern->size ? pattern->size : 1;
    int64_t missing = COUNT(pattern->signature & ~signature), extra = COUNT(signature & ~pattern->signature);
    int64_t longer = length > size ? length : size;
    double raw = 1 - search->by_size * (double)(missing > extra ? missing : extra) / (double)longer;
    raw -= search->by_both * (double)(missing + extra) / (double)(length + size);
    uint64_t differs = pattern->first ^ first;
    int shared = 0;
    while (shared < FIRST && !(differs & 0xFFFF)) {
        differs >>= 16;
        shared++;
    }
    raw = 1 - (1 - raw) * search->query->gain[shared];
    if (inside && (!missing || !extra) && inside[length] > raw)
        raw = inside[length];
    return raw;
}

static void begin(Search *search, const Query *query)
{
    search->query = query;
    search->by_size = 1 - query->order;
    search->by_both = query->order;
    pattern_of(&search->plain, query->text, query->size, query->signature, query->first);
    pattern_of(&search->shaped, query->shape, query->shape_size, query->shape_signature, query->shape_first);
    search->room = 0;
    search->text = NULL;
    make_room(search, FEW);
}

/* How alike each string looks, or 0 where by its signature it cannot be above `floor`: letters.Strings.above. `inside` by
   the length of the string. */
CLONES void letters_above(const Query *query, const Strings *strings, const double *inside, double floor,
                          const int64_t *places, int64_t count, double *values)
{
    Search search;
    begin(&search, query);
    int merges = query->shape_size < query->size;
    for (int64_t at = 0; at < count; at++) {
        int64_t place = places[at], length = strings->length[place];
        double value = most(&search, &search.plain, strings->signature[place], strings->first[place], length, inside);
        if (value <= floor && (merges || strings->shape_length[place] < length))
            value = query->shape_only * most(&search, &search.shaped, strings->shape_signature[place],
                                             strings->shape_first[place], length, NULL);
        values[at] = value > floor ? alike(&search, strings, place) : 0;
    }
    free(search.text);
}

/* The share of letters that each string has in common with ours, in order: letters.Strings.in_order. */
CLONES void letters_in_order(const Query *query, const Strings *strings, const int64_t *places, int64_t count,
                             double *values)
{
    Search search;
    begin(&search, query);
    for (int64_t at = 0; at < count; at++) {
        const uint8_t *from = strings->blob + strings->start[places[at]];
        const uint8_t *end = strings->blob + strings->start[places[at] + 1];
        make_room(&search, end - from);
        int64_t size = decode(from, end, search.text), both = size + query->size;
        values[at] = both ? 1.0 - (double)(both - 2 * shared_in_order(&search.plain, search.text, size)) / (double)both : 1.0;
    }
    free(search.text);
}

/* What a string may lack to be looked at, for every length: characters in all, where the first letters differ and where
   they are the same; by its letters and by its shapes; and whether it may stand inside the other, lacking nothing. */
typedef struct {
    const uint8_t *differ, *same, *shape_differ, *shape_same, *within;
    double least, least_plain, least_shape;
} Limits;

INLINE int may_pass(const Search *search, const Pattern *pattern, uint64_t signature, uint64_t first, int64_t length,
                    const uint8_t *differ, const uint8_t *same, double least)
{
    int64_t lacking = COUNT(pattern->signature ^ signature);
    if (lacking > same[length] || (lacking > differ[length] && (first ^ pattern->first) & 0xFFFF))
        return 0;
    return most(search, pattern, signature, first, length, NULL) >= least;
}

INLINE int may_stand_inside(const Pattern *pattern, uint64_t signature)
{
    return !(pattern->signature & ~signature) | !(signature & ~pattern->signature);
}

typedef struct {
    int64_t count, *places;
    double *values;
} Found;

INLINE void consider(Search *search, const Strings *strings, const Limits *limits, int64_t place, int by_letters,
                     int by_shape, Found *found)
{
    int64_t length = strings->length[place];
    int may = by_letters && ((limits->within[length] && may_stand_inside(&search->plain, strings->signature[place])) ||
                             may_pass(search, &search->plain, strings->signature[place], strings->first[place], length,
                                      limits->differ, limits->same, limits->least_plain));
    if (!may && (by_shape || strings->shape_length[place] < length))
        may = may_pass(search, &search->shaped, strings->shape_signature[place], strings->shape_first[place], length,
                       limits->shape_differ, limits->shape_same, limits->least_shape);
    if (!may)
        return;
    double value = alike(search, strings, place);
    if (value >= limits->least) {
        found->places[found->count] = place;
        found->values[found->count++] = value;
    }
}

/* letters.Strings.near: strings from `low` to `high` by their letters, all where pairs are read as one letter by their
   shapes. `apart` holds the five rows of `Limits`, each for `lengths` lengths. What is left after the first sieve is
   written down without asking, as a processor guesses wrong which strings these will be. */
CLONES int64_t letters_near(const Query *query, const Strings *strings, const uint8_t *apart, int64_t lengths,
                            int64_t low, int64_t high, double least, int64_t *places, double *values)
{
    Search search;
    begin(&search, query);
    Limits limits = {apart, apart + lengths, apart + 2 * lengths, apart + 3 * lengths, apart + 4 * lengths, least,
                     least - 1e-6, least / query->shape_only - 1e-6};
    Found found = {0, places, values};
    int merges = query->shape_size < query->size;
    int64_t merging = 0, start = merges ? 0 : low, stop = merges ? strings->count : high;
    for (; !merges && merging < strings->merging_count && strings->merging[merging] < low; merging++)
        consider(&search, strings, &limits, strings->merging[merging], 0, 1, &found);
    for (int64_t from = start; from < stop; from += BLOCK) {
        int64_t to = stop - from < BLOCK ? stop : from + BLOCK, passed = 0;
        uint8_t may[BLOCK];
        int64_t left[BLOCK];
        for (int64_t place = from; place < to; place++) {
            int64_t length = strings->length[place];
            uint64_t theirs = strings->signature[place];
            may[place - from] = (COUNT(search.plain.signature ^ theirs) <= limits.same[length]) |
                                (limits.within[length] & may_stand_inside(&search.plain, theirs));
            if (merges)
                may[place - from] |=
                    COUNT(search.shaped.signature ^ strings->shape_signature[place]) <= limits.shape_same[length];
        }
        for (; !merges && merging < strings->merging_count && strings->merging[merging] < to; merging++)
            may[strings->merging[merging] - from] = 1;
        for (int64_t place = from; place < to; place++) {
            left[passed] = place;
            passed += may[place - from];
        }
        for (int64_t at = 0; at < passed; at++)
            consider(&search, strings, &limits, left[at], left[at] >= low && left[at] < high, merges, &found);
    }
    for (; !merges && merging < strings->merging_count; merging++)
        consider(&search, strings, &limits, strings->merging[merging], 0, 1, &found);
    free(search.text);
    return found.count;
}

/* Where a text stands among others in order of their bytes; -1 where it is not among them. */
int64_t texts_find(const uint8_t *blob, const uint32_t *start, int64_t count, const uint8_t *text, int64_t size)
{
    int64_t low = 0, high = count;
    while (low < high) {
        int64_t middle = (low + high) / 2, length = start[middle + 1] - start[middle];
        int order = memcmp(blob + start[middle], text, (size_t)(length < size ? length : size));
        if (order < 0 || (!order && length < size))
            low = middle + 1;
        else
            high = middle;
    }
    if (low < count && start[low + 1] - start[low] == size && !memcmp(blob + start[low], text, (size_t)size))
        return low;
    return -1;
}
