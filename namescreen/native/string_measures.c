/* How alike one string and those of a register look, by each of the measures of closeness/letters.py. The order of every
   sum is the same, so that the results are equal to the last bit. */

#include <stdlib.h>
#include <string.h>

#include "spelling.h"

enum { LONGEST_STRING = 65535, ASCII = 128, MEASURES = 10, SPELLED = 8, FEW = 256, LETTERS = 32 };

/* A string of at most LONGEST_PATTERN characters, with the positions of each character as bits. */
typedef struct {
    int64_t size;
    const uint32_t *text;
    uint64_t ascii[ASCII];
    int64_t others;
    uint32_t other[LONGEST_PATTERN];
    uint64_t other_at[LONGEST_PATTERN];
} Pattern;

/* The strings of a register: their bytes, and where each begins and the last ends. */
typedef struct {
    const uint8_t *blob;
    const uint32_t *start;
    int64_t count, size; /* `size` of the blob */
} StringArrays;

typedef struct {
    StringArrays arrays;
    double shape_only; /* appearance.SHAPE_ONLY */
    Pattern plain, skeleton, consonants;
    uint32_t consonants_text[LONGEST_PATTERN];
    Spelling spelling;
    int64_t own_pairs;               /* how many different pairs of letters the query has */
    uint32_t *text, *other_skeleton, *other_consonants; /* of the string that is compared */
    int64_t room;                    /* for its characters */
    int error;
} Search;

INLINE uint64_t positions_of(const Pattern *pattern, uint32_t letter)
{
    if (letter < ASCII)
        return pattern->ascii[letter];
    for (int64_t other = 0; other < pattern->others; other++)
        if (pattern->other[other] == letter)
            return pattern->other_at[other];
    return 0;
}

INLINE uint64_t all_positions(const Pattern *pattern)
{
    return pattern->size == LONGEST_PATTERN ? ~0ULL : (1ULL << pattern->size) - 1;
}

static void fill_pattern(Pattern *pattern, const uint32_t *text, int64_t size)
{
    memset(pattern, 0, sizeof *pattern);
    pattern->text = text;
    pattern->size = size;
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

/* Restricted edit distance and length of the longest common subsequence of two strings that are not empty, bit-parallel
   (H. Hyyrö, "A bit-vector algorithm for computing Levenshtein and Damerau edit distances", 2003; "Bit-parallel
   LCS-length computation revisited", 2004). */
INLINE int64_t distance_and_shared(const Pattern *pattern, const uint32_t *text, int64_t size, int64_t *shared)
{
    uint64_t plus = ~0ULL, minus = 0, diagonal = 0, before = 0, unmet = ~0ULL;
    uint64_t last = 1ULL << (pattern->size - 1);
    int64_t distance = pattern->size;
    for (int64_t at = 0; at < size; at++) {
        uint64_t here = positions_of(pattern, text[at]);
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
    *shared = POPCOUNT(~unmet & all_positions(pattern));
    return distance;
}

/* appearance.confusable_skeleton: no stand-in begins or ends another pair, so one pass does what eight do there. */
static int64_t fill_skeleton(const uint32_t *text, int64_t size, uint32_t *skeleton)
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
        skeleton[length++] = letter;
    }
    return length;
}

static void make_room(Search *search, int64_t characters)
{
    if (characters <= search->room)
        return;
    free(search->text);
    search->room = 2 * characters;
    search->text = malloc(3 * (size_t)search->room * sizeof *search->text);
    if (!search->text) {
        search->room = 0;
        search->error = NO_MEMORY;
        return;
    }
    search->other_skeleton = search->text + search->room;
    search->other_consonants = search->other_skeleton + search->room;
}

/* Decode a string of the register from UTF-8 into `text`; returns the number of its characters, or -1 with an error. */
static int64_t decode(Search *search, int64_t place)
{
    const StringArrays *arrays = &search->arrays;
    if (place < 0 || place >= arrays->count ||
        !within(arrays->start[place], arrays->start[place + 1], arrays->size, LONGEST_STRING)) {
        search->error = OUT_OF_BOUNDS;
        return -1;
    }
    const uint8_t *from = arrays->blob + arrays->start[place], *end = arrays->blob + arrays->start[place + 1];
    make_room(search, end - from);
    if (search->error)
        return -1;
    uint32_t *to = search->text;
    while (from < end) {
        uint32_t byte = *from++;
        if (byte >= 0x80) {
            int more = byte >= 0xF0 ? 3 : byte >= 0xE0 ? 2 : 1;
            byte &= 0x3F >> more;
            while (more-- && from < end)
                byte = byte << 6 | (*from++ & 0x3F);
        }
        *to++ = byte;
    }
    return to - search->text;
}

/* Where the query has the pair of letters `first`, `second`. */
INLINE uint64_t pair_positions(const Pattern *pattern, uint32_t first, uint32_t second)
{
    return (positions_of(pattern, first) << 1) & positions_of(pattern, second);
}

/* How many different pairs of letters a text has, and, of these, how many the query has. */
static int64_t different_pairs(const Pattern *pattern, const uint32_t *text, int64_t size, int64_t *common)
{
    uint32_t met[LETTERS] = {0}; /* of each letter from a to z, by which of them it was followed */
    int64_t different = 0;
    for (int64_t at = 1; at < size; at++) {
        uint32_t first = text[at - 1], second = text[at];
        int is_new = 1;
        if (first >= 'a' && first <= 'z' && second >= 'a' && second <= 'z') {
            uint32_t bit = 1u << (second - 'a');
            is_new = !(met[first - 'a'] & bit);
            met[first - 'a'] |= bit;
        } else {
            for (int64_t before = 1; before < at && is_new; before++)
                is_new = text[before - 1] != first || text[before] != second;
        }
        if (is_new) {
            different++;
            *common += pair_positions(pattern, first, second) != 0;
        }
    }
    return size > 1 ? different : 1; /* a single letter stands for itself, and is no pair */
}

/* letters._consonants. */
static int64_t fill_consonants(const uint32_t *text, int64_t size, uint32_t *consonants)
{
    int64_t length = 0;
    for (int64_t at = 0; at < size; at++) {
        uint32_t letter = text[at];
        if (letter != 'a' && letter != 'e' && letter != 'i' && letter != 'o' && letter != 'u' && letter != 'y')
            consonants[length++] = letter;
    }
    if (!length)
        memcpy(consonants, text, (size_t)size * sizeof *text);
    return length ? length : size;
}

/* letters.letter_measures of the query and a string of the register, neither empty and not the same, into `measures`,
   and after them 1 where their skeletons are the same; how alike they are spelled comes when `spelling` is settled. */
static void measures_of(Search *search, int64_t place, double *measures)
{
    int64_t size = decode(search, place);
    if (size < 1)
        return;
    const uint32_t *text = search->text, *skeleton = search->other_skeleton;
    const Pattern *plain = &search->plain;
    int64_t skeleton_size = fill_skeleton(text, size, search->other_skeleton);
    int64_t longer = size > plain->size ? size : plain->size, both = size + plain->size;
    int64_t skeleton_longer = skeleton_size > search->skeleton.size ? skeleton_size : search->skeleton.size;
    int64_t shared, distance = distance_and_shared(&search->skeleton, skeleton, skeleton_size, &shared);
    double shapes = search->shape_only * (1.0 - (double)distance / (double)skeleton_longer);
    distance = distance_and_shared(plain, text, size, &shared);
    double edits = 1.0 - (double)distance / (double)longer;
    int64_t consonants = fill_consonants(text, size, search->other_consonants), none_shared;
    int64_t more_consonants = consonants > search->consonants.size ? consonants : search->consonants.size;
    distance = distance_and_shared(&search->consonants, search->other_consonants, consonants, &none_shared);
    int64_t common = 0, beginning = 0, ending = 0, shorter = both - longer;
    int64_t pairs = different_pairs(plain, text, size, &common) + search->own_pairs;
    while (beginning < shorter && text[beginning] == plain->text[beginning])
        beginning++;
    while (ending < shorter && text[size - 1 - ending] == plain->text[plain->size - 1 - ending])
        ending++;
    measures[0] = edits > shapes ? edits : shapes;
    measures[1] = 1.0 - (double)(both - 2 * shared) / (double)both;
    measures[2] = (double)(2 * common) / (double)pairs;
    measures[3] = (double)beginning / (double)longer;
    measures[4] = (double)ending / (double)longer;
    measures[5] = text[0] == plain->text[0];
    measures[6] = 1.0 - (double)distance / (double)more_consonants;
    measures[7] = (double)shorter / (double)longer;
    spell(&search->spelling, text, size, measures + SPELLED);
    measures[SPELLED + 1] = skeleton_size == search->skeleton.size &&
                  !memcmp(skeleton, search->skeleton.text, (size_t)skeleton_size * sizeof *skeleton);
}

/* `measures_of` each string, MEASURES numbers for each; those of an empty one stay as they are. `text` is the query, of
   `size` characters, and `skeleton` its confusable skeleton. Returns 0 or an error. */
CLONES int64_t strings_measures(const uint8_t *blob, int64_t blob_size, const uint32_t *start, int64_t strings,
                                const uint32_t *text, int64_t size, const uint32_t *skeleton, int64_t skeleton_size,
                                double shape_only, const int64_t *places, int64_t count, double *measures)
{
    Search search = {.arrays = {blob, start, strings, blob_size}, .shape_only = shape_only};
    fill_pattern(&search.plain, text, size);
    fill_pattern(&search.skeleton, skeleton, skeleton_size);
    int64_t consonants = fill_consonants(text, size, search.consonants_text);
    fill_pattern(&search.consonants, search.consonants_text, consonants);
    int64_t none = 0;
    search.own_pairs = different_pairs(&search.plain, text, size, &none);
    fill_spelling(&search.spelling, text, size);
    make_room(&search, FEW);
    for (int64_t at = 0; at < count && !search.error; at++)
        measures_of(&search, places[at], measures + MEASURES * at);
    settle(&search.spelling);
    free(search.text);
    return search.error;
}

/* letters.spelled_alike of a text of at most LONGEST_PATTERN characters and another, neither empty. */
double strings_spelled_alike(const uint32_t *text, int64_t size, const uint32_t *other, int64_t other_size)
{
    Spelling spelling = {.wide = 1};
    fill_spelling(&spelling, text, size);
    return long_likeness(&spelling, other, other_size);
}

/* The place of a text among `count` others in order of their bytes; `count` where it is not among them; or an error. */
static int64_t place_of(const uint8_t *blob, int64_t blob_size, const uint32_t *start, int64_t count,
                        const uint8_t *text, int64_t size)
{
    int64_t low = 0, high = count;
    while (low < high) {
        int64_t middle = low + (high - low) / 2;
        if (!within(start[middle], start[middle + 1], blob_size, blob_size))
            return OUT_OF_BOUNDS;
        int64_t length = start[middle + 1] - start[middle];
        int order = memcmp(blob + start[middle], text, (size_t)(length < size ? length : size));
        if (!order && length == size)
            return middle;
        if (order < 0 || (!order && length < size))
            low = middle + 1;
        else
            high = middle;
    }
    return count;
}

/* The places of some texts, each ended by a zero byte, `size` bytes in all, as `place_of` has them; 0, or an error. */
int64_t strings_find(const uint8_t *blob, int64_t blob_size, const uint32_t *start, int64_t count, const uint8_t *texts,
                     int64_t size, int64_t text_count, int64_t *places)
{
    const uint8_t *text = texts, *end = texts + size;
    for (int64_t at = 0; at < text_count; at++) {
        const uint8_t *stop = memchr(text, 0, (size_t)(end - text));
        if (!stop)
            return OUT_OF_BOUNDS;
        places[at] = place_of(blob, blob_size, start, count, text, stop - text);
        if (places[at] < 0)
            return places[at];
        text = stop + 1;
    }
    return 0;
}
