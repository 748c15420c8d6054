/* letters.spelled_alike of one text and many, some at a time: EDITEX, whose steps are the same for all of them, in lanes of
   one register of the processor. All costs are whole numbers, halves of a letter. */

#ifndef NAMESCREEN_SPELLING_H
#define NAMESCREEN_SPELLING_H

#include <string.h>

#include "kernel.h"

enum { LONGEST_PATTERN = 64, LANES = 8, LONGEST_IN_LANE = 256, ONE_NUMBER = 1 << 16 };

typedef int16_t Lanes __attribute__((vector_size(2 * LANES)));

/* A query, and the texts that wait to be compared with it, each in its lane. */
typedef struct {
    const uint32_t *query;
    int64_t size, waiting, longest;
    int wide; /* whether it has letters that do not fit a lane */
    int32_t leaving_out[LONGEST_PATTERN]; /* what it costs to leave out each letter of the query */
    int64_t sizes[LANES];
    double *results[LANES];
    int16_t letters[LONGEST_IN_LANE][LANES], groups[LONGEST_IN_LANE][LANES], alone[LONGEST_IN_LANE][LANES];
} Spelling;

/* The groups of letters._HEARD_ALIKE that each letter from a to z is in, a bit a group. */
static const uint16_t GROUPS[26] = {
    ['a' - 'a'] = 1, ['e' - 'a'] = 1, ['i' - 'a'] = 1, ['o' - 'a'] = 1, ['u' - 'a'] = 1, ['y' - 'a'] = 1,
    ['b' - 'a'] = 2, ['p' - 'a'] = 2 | 128, ['c' - 'a'] = 4 | 512, ['k' - 'a'] = 4, ['q' - 'a'] = 4,
    ['d' - 'a'] = 8, ['t' - 'a'] = 8, ['l' - 'a'] = 16, ['r' - 'a'] = 16, ['m' - 'a'] = 32, ['n' - 'a'] = 32,
    ['g' - 'a'] = 64, ['j' - 'a'] = 64, ['f' - 'a'] = 128, ['v' - 'a'] = 128,
    ['s' - 'a'] = 256 | 512, ['x' - 'a'] = 256, ['z' - 'a'] = 256 | 512,
};

INLINE uint16_t groups_of(uint32_t letter)
{
    return letter >= 'a' && letter <= 'z' ? GROUPS[letter - 'a'] : 0;
}

/* letters._replacing. */
INLINE int32_t replacing(uint32_t one, uint32_t other)
{
    return one == other ? 0 : groups_of(one) & groups_of(other) ? 1 : 2;
}

/* letters._leaving_out of one letter. */
INLINE int32_t leaving_out(const uint32_t *text, int64_t at)
{
    if (!at)
        return 2;
    int32_t cost = replacing(text[at - 1], text[at]);
    return cost > 1 && (text[at - 1] == 'h' || text[at - 1] == 'w') ? 1 : cost;
}

/* 1 - EDITEX over the longer length. */
INLINE double likeness(const Spelling *spelling, int64_t cost, int64_t size)
{
    int64_t longer = size > spelling->size ? size : spelling->size;
    return 1.0 - (double)cost / (2.0 * (double)longer);
}

static void fill_spelling(Spelling *spelling, const uint32_t *query, int64_t size)
{
    spelling->query = query;
    spelling->size = size;
    for (int64_t at = 0; at < size; at++) {
        spelling->leaving_out[at] = leaving_out(query, at);
        spelling->wide |= query[at] >= ONE_NUMBER;
    }
}

/* The likeness of one long text, alone. */
static double long_likeness(const Spelling *spelling, const uint32_t *text, int64_t size)
{
    int32_t row[LONGEST_PATTERN + 1] = {0};
    for (int64_t mine = 0; mine < spelling->size; mine++)
        row[mine + 1] = row[mine] + spelling->leaving_out[mine];
    for (int64_t at = 0; at < size; at++) {
        int32_t alone = leaving_out(text, at), corner = row[0];
        row[0] += alone;
        for (int64_t mine = 0; mine < spelling->size; mine++) {
            int32_t best = corner + replacing(spelling->query[mine], text[at]);
            corner = row[mine + 1];
            if (corner + alone < best)
                best = corner + alone;
            if (row[mine] + spelling->leaving_out[mine] < best)
                best = row[mine] + spelling->leaving_out[mine];
            row[mine + 1] = best;
        }
    }
    return likeness(spelling, row[spelling->size], size);
}

INLINE Lanes lesser(Lanes one, Lanes other)
{
    Lanes less = one < other;
    return (one & less) | (other & ~less);
}

/* The likeness of the texts that wait. */
static void settle(Spelling *spelling)
{
    Lanes row[LONGEST_PATTERN + 1] = {{0}};
    for (int64_t mine = 0; mine < spelling->size; mine++)
        row[mine + 1] = row[mine] + (int16_t)spelling->leaving_out[mine];
    for (int64_t at = 0; at < spelling->longest; at++) {
        Lanes letters, groups, alone, corner = row[0];
        memcpy(&letters, spelling->letters[at], sizeof letters);
        memcpy(&groups, spelling->groups[at], sizeof groups);
        memcpy(&alone, spelling->alone[at], sizeof alone);
        row[0] += alone;
        for (int64_t mine = 0; mine < spelling->size; mine++) {
            uint32_t own = spelling->query[mine];
            Lanes none_shared = (groups & (int16_t)groups_of(own)) == 0, same = letters == (int16_t)own;
            Lanes best = corner + ((1 - none_shared) & ~same);
            corner = row[mine + 1];
            best = lesser(best, corner + alone);
            row[mine + 1] = lesser(best, row[mine] + (int16_t)spelling->leaving_out[mine]);
        }
        for (int lane = 0; lane < spelling->waiting; lane++)
            if (spelling->sizes[lane] == at + 1)
                *spelling->results[lane] = likeness(spelling, row[spelling->size][lane], at + 1);
    }
    spelling->waiting = spelling->longest = 0;
}

/* The likeness of a text to the query, both not empty, into `result`: at the latest when the texts that wait are
   settled. */
static void spell(Spelling *spelling, const uint32_t *text, int64_t size, double *result)
{
    int wide = spelling->wide || size > LONGEST_IN_LANE;
    for (int64_t at = 0; at < size && !wide; at++)
        wide = text[at] >= ONE_NUMBER;
    if (wide) {
        *result = long_likeness(spelling, text, size);
        return;
    }
    int64_t lane = spelling->waiting++;
    for (int64_t at = 0; at < size; at++) {
        spelling->letters[at][lane] = (int16_t)text[at];
        spelling->groups[at][lane] = (int16_t)groups_of(text[at]);
        spelling->alone[at][lane] = (int16_t)leaving_out(text, at);
    }
    spelling->sizes[lane] = size;
    spelling->results[lane] = result;
    spelling->longest = size > spelling->longest ? size : spelling->longest;
    if (spelling->waiting == LANES)
        settle(spelling);
}

#endif
