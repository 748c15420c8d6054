/* Strings of a register and their similarity in appearance: declarations of string_similarity.c and string_search.c. */

#ifndef NAMESCREEN_STRINGS_H
#define NAMESCREEN_STRINGS_H

#include <stdlib.h>
#include <string.h>

#include "kernel.h"

enum { LONGEST_PATTERN = 64, LONGEST_STRING = 65535, PREFIX = 4, SHORTEST_INSIDE = 3, ASCII = 128, MEASURES = 9 };

/* A string of at most LONGEST_PATTERN characters, with the positions of each character as bits. */
typedef struct {
    int64_t size;
    const uint32_t *text;
    uint64_t ascii[ASCII];
    int64_t others;
    uint32_t other[LONGEST_PATTERN];
    uint64_t other_at[LONGEST_PATTERN];
    uint64_t signature, first;
} Pattern;

/* _Query in strings.py: a string and its confusable skeleton, and the constants of closeness/appearance.py. */
typedef struct {
    const uint32_t *text, *skeleton;
    int64_t size, skeleton_size;
    uint64_t signature, skeleton_signature, first, skeleton_first;
    double order, prefix_bonus, shape_only, inside, inside_start, inside_elsewhere, different;
    const double *gap; /* the factor on a gap after 0 to PREFIX shared first letters */
} Query;

/* _Arrays in strings.py: the strings in order of their length. */
typedef struct {
    const uint8_t *blob;
    const uint32_t *start;
    const uint16_t *length, *skeleton_length;
    const uint64_t *signature, *skeleton_signature, *first, *skeleton_first;
    const uint32_t *merging; /* the strings whose skeleton is shorter, ascending */
    int64_t count, merging_count, size; /* `size` of the blob */
} StringArrays;

typedef struct {
    const Query *query;
    const StringArrays *arrays;
    Pattern plain, skeleton;
    uint32_t *text, *other_skeleton; /* of the string that is compared */
    int64_t room;                    /* for its characters */
    int error;
} Search;

HIDDEN void string_search_begin(Search *search, const Query *query, const StringArrays *arrays);
HIDDEN int64_t string_decode(Search *search, int64_t place);
HIDDEN double string_similarity(Search *search, int64_t place);
HIDDEN void string_measures(Search *search, int64_t place, double *measures);

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

#endif
