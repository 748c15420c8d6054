/* The strings of a register that look like one string, behind bounds that count the letters either lacks. Equal to the
   last bit to register/string_search.py. */

#include "strings.h"

enum { BLOCK = 512 };

/* An upper bound on the similarity of two strings, by the letters that either lacks and by their first letters.
   `inside` is the credit for containment, by the length of the string, or NULL. */
INLINE double upper_bound(const Query *query, const Pattern *pattern, uint64_t signature, uint64_t first, int64_t length,
                          const double *inside)
{
    int64_t size = pattern->size ? pattern->size : 1;
    int64_t missing = POPCOUNT(pattern->signature & ~signature), extra = POPCOUNT(signature & ~pattern->signature);
    int64_t longer = length > size ? length : size;
    double raw = 1 - (1 - query->order) * (double)(missing > extra ? missing : extra) / (double)longer;
    raw -= query->order * (double)(missing + extra) / (double)(length + size);
    uint64_t differs = pattern->first ^ first;
    int shared = 0;
    while (shared < PREFIX && !(differs & 0xFFFF)) {
        differs >>= 16;
        shared++;
    }
    raw = 1 - (1 - raw) * query->gap[shared];
    if (inside && (!missing || !extra) && inside[length] > raw)
        raw = inside[length];
    return raw;
}

/* The similarity of each string, or 0 where it cannot be above `floor`. `inside` has a value for each of `lengths`
   lengths. Returns 0 or an error. */
CLONES int64_t strings_above(const Query *query, const StringArrays *arrays, const double *inside, int64_t lengths,
                             double floor, const int64_t *places, int64_t count, double *values)
{
    Search search;
    string_search_begin(&search, query, arrays);
    int merges = query->skeleton_size < query->size;
    for (int64_t at = 0; at < count && !search.error; at++) {
        int64_t place = places[at];
        if (place < 0 || place >= arrays->count || arrays->length[place] >= lengths) {
            search.error = OUT_OF_BOUNDS;
            break;
        }
        int64_t length = arrays->length[place];
        double value = upper_bound(query, &search.plain, arrays->signature[place], arrays->first[place], length, inside);
        if (value <= floor && (merges || arrays->skeleton_length[place] < length))
            value = query->shape_only * upper_bound(query, &search.skeleton, arrays->skeleton_signature[place],
                                                    arrays->skeleton_first[place], length, NULL);
        values[at] = value > floor ? string_similarity(&search, place) : 0;
    }
    free(search.text);
    return search.error;
}

/* The share of letters in a common order (Indel similarity) of each string. The longest common subsequence is
   bit-parallel (H. Hyyrö, "Bit-parallel LCS-length computation revisited", 2004). Returns 0 or an error. */
CLONES int64_t strings_in_order(const Query *query, const StringArrays *arrays, const int64_t *places, int64_t count,
                                double *values)
{
    Search search;
    string_search_begin(&search, query, arrays);
    for (int64_t at = 0; at < count && !search.error; at++) {
        int64_t size = string_decode(&search, places[at]), both = size + query->size;
        uint64_t unmet = ~0ULL;
        for (int64_t letter = 0; letter < size; letter++) {
            uint64_t met = unmet & positions_of(&search.plain, search.text[letter]);
            unmet = (unmet + met) | (unmet - met);
        }
        int64_t shared = POPCOUNT(~unmet & all_positions(&search.plain));
        values[at] = both ? 1.0 - (double)(both - 2 * shared) / (double)both : 1.0;
    }
    free(search.text);
    return search.error;
}

/* `string_measures` of each string, MEASURES numbers for each; those of an empty one stay as they are. Returns 0 or an
   error. */
CLONES int64_t strings_measures(const Query *query, const StringArrays *arrays, const int64_t *places, int64_t count,
                                double *measures)
{
    Search search;
    string_search_begin(&search, query, arrays);
    for (int64_t at = 0; at < count && !search.error; at++)
        string_measures(&search, places[at], measures + MEASURES * at);
    free(search.text);
    return search.error;
}

/* The most characters that a string may lack, by its length: where the first letters differ and where they are the
   same, by its letters and by its skeleton; and whether one string may stand inside the other. */
typedef struct {
    const uint8_t *differ, *same, *skeleton_differ, *skeleton_same, *inside;
    double least, least_plain, least_skeleton;
} Limits;

typedef struct {
    Search search;
    Limits limits;
    int64_t room, count, *places;
    double *values;
} Finding;

INLINE int may_pass(const Search *search, const Pattern *pattern, uint64_t signature, uint64_t first, int64_t length,
                    const uint8_t *differ, const uint8_t *same, double least)
{
    int64_t lacking = POPCOUNT(pattern->signature ^ signature);
    if (lacking > same[length] || (lacking > differ[length] && (first ^ pattern->first) & 0xFFFF))
        return 0;
    return upper_bound(search->query, pattern, signature, first, length, NULL) >= least;
}

INLINE int may_stand_inside(const Pattern *pattern, uint64_t signature)
{
    return !(pattern->signature & ~signature) | !(signature & ~pattern->signature);
}

/* Compare one string in full if its bounds allow it, and keep it if it is similar enough. */
INLINE void consider(Finding *finding, int64_t place, int by_letters, int by_skeleton)
{
    Search *search = &finding->search;
    const StringArrays *arrays = search->arrays;
    const Limits *limits = &finding->limits;
    int64_t length = arrays->length[place];
    uint64_t signature = arrays->signature[place];
    int may = by_letters && ((limits->inside[length] && may_stand_inside(&search->plain, signature)) ||
                             may_pass(search, &search->plain, signature, arrays->first[place], length, limits->differ,
                                      limits->same, limits->least_plain));
    if (!may && (by_skeleton || arrays->skeleton_length[place] < length))
        may = may_pass(search, &search->skeleton, arrays->skeleton_signature[place], arrays->skeleton_first[place],
                       length, limits->skeleton_differ, limits->skeleton_same, limits->least_skeleton);
    if (!may)
        return;
    double value = string_similarity(search, place);
    if (value >= limits->least && !search->error) {
        if (finding->count == finding->room) {
            search->error = OUT_OF_BOUNDS;
            return;
        }
        finding->places[finding->count] = place;
        finding->values[finding->count++] = value;
    }
}

/* The next string of `merging`, if it is below `limit`: its place, or -1. They ascend. */
INLINE int64_t next_merging(Finding *finding, int64_t *at, int64_t from, int64_t limit, int64_t lengths)
{
    const StringArrays *arrays = finding->search.arrays;
    if (*at >= arrays->merging_count || arrays->merging[*at] >= limit || finding->search.error)
        return -1;
    int64_t place = arrays->merging[(*at)++];
    if (place < from || place >= arrays->count || arrays->length[place] >= lengths) {
        finding->search.error = OUT_OF_BOUNDS;
        return -1;
    }
    return place;
}

/* Every string at least `least` similar: those from `low` to `high` by their letters, and those of all lengths whose
   skeletons merge letters. `limits` are the five rows of `Limits`, each for `lengths` lengths. Returns how many, or an
   error. What is left after the first filter is written down without a branch, as a processor guesses wrong which
   strings these will be. */
CLONES int64_t strings_near(const Query *query, const StringArrays *arrays, const uint8_t *limits, int64_t lengths,
                            int64_t low, int64_t high, double least, int64_t *places, double *values)
{
    int merges = query->skeleton_size < query->size;
    int64_t merging = 0, place, start = merges ? 0 : low, stop = merges ? arrays->count : high;
    if (low < 0 || high > arrays->count)
        return OUT_OF_BOUNDS;
    Finding finding = {
        .limits = {limits, limits + lengths, limits + 2 * lengths, limits + 3 * lengths, limits + 4 * lengths, least,
                   least - 1e-6, least / query->shape_only - 1e-6},
        .room = arrays->count, .places = places, .values = values,
    };
    Search *search = &finding.search;
    string_search_begin(search, query, arrays);
    while (!merges && (place = next_merging(&finding, &merging, 0, low, lengths)) >= 0)
        consider(&finding, place, 0, 1);
    for (int64_t from = start; from < stop && !search->error; from += BLOCK) {
        int64_t to = stop - from < BLOCK ? stop : from + BLOCK, passed = 0;
        uint8_t may[BLOCK];
        int64_t left[BLOCK];
        for (place = from; place < to; place++) {
            int64_t length = arrays->length[place];
            if (length >= lengths) {
                search->error = OUT_OF_BOUNDS;
                break;
            }
            uint64_t signature = arrays->signature[place];
            may[place - from] = (POPCOUNT(search->plain.signature ^ signature) <= finding.limits.same[length]) |
                                (finding.limits.inside[length] & may_stand_inside(&search->plain, signature));
            if (merges)
                may[place - from] |= POPCOUNT(search->skeleton.signature ^ arrays->skeleton_signature[place]) <=
                                     finding.limits.skeleton_same[length];
        }
        while (!merges && (place = next_merging(&finding, &merging, from, to, lengths)) >= 0)
            may[place - from] = 1;
        for (place = from; place < to && !search->error; place++) {
            left[passed] = place;
            passed += may[place - from];
        }
        for (int64_t at = 0; at < passed && !search->error; at++)
            consider(&finding, left[at], left[at] >= low && left[at] < high, merges);
    }
    while (!merges && (place = next_merging(&finding, &merging, high, INT64_MAX, lengths)) >= 0)
        consider(&finding, place, 0, 1);
    free(search->text);
    return search->error ? search->error : finding.count;
}

/* The place of a text among `count` others in order of their bytes; `count` where it is not among them; or an error. */
int64_t strings_find(const uint8_t *blob, int64_t blob_size, const uint32_t *start, int64_t count, const uint8_t *text,
                     int64_t size)
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
