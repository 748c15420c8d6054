/* The strings of a register that share most of their bigrams with one. Equal to register/bigram_index.py. */

#include <stdlib.h>

#include "kernel.h"

enum { MOST_COUNTED = UINT8_MAX };

/* How alike a string is, in steps: Dice's coefficient of the bigrams. */
INLINE uint32_t level_of(uint32_t shared, uint32_t both, uint32_t levels)
{
    uint32_t level = 2 * levels * shared / both;
    return level < levels ? level : levels;
}

/* `keys` are the bigrams of the text, `postings` the strings that hold each bigram, from its place in `start` on, and
   `text_start` the boundaries of the strings. Writes down at most `most` places; returns how many, or an error. */
int64_t bigrams_most_alike(const uint32_t *postings, int64_t posting_count, const uint32_t *start, int64_t start_count,
                           const uint32_t *text_start, int64_t count, const uint16_t *keys, int64_t key_count,
                           const uint8_t *left_out, int64_t levels, int64_t least_shared, int64_t most, int64_t *places)
{
    int64_t found = 0, error = 0, least = levels + 1;
    int64_t enough = (key_count + least_shared - 1) / least_shared;
    uint8_t *shared = calloc((size_t)count + 1, sizeof *shared);
    int64_t *reached = calloc((size_t)levels + 1, sizeof *reached);
    if (!shared || !reached)
        error = NO_MEMORY;
    for (int64_t key = 0; key < key_count && !error; key++) {
        if (keys[key] + 1 >= start_count || !within(start[keys[key]], start[keys[key] + 1], posting_count, posting_count))
            error = OUT_OF_BOUNDS;
        for (int64_t at = error ? 1 : start[keys[key]], end = error ? 0 : start[keys[key] + 1]; at < end; at++) {
            if (postings[at] >= count) {
                error = OUT_OF_BOUNDS;
                break;
            }
            shared[postings[at]] += shared[postings[at]] < MOST_COUNTED;
        }
    }
    if (enough > MOST_COUNTED)
        enough = MOST_COUNTED;
    for (int64_t place = 0; place < count && !error; place++) {
        if (shared[place] < enough || (left_out && left_out[place]))
            continue;
        if (text_start[place] > text_start[place + 1])
            error = OUT_OF_BOUNDS;
        else
            reached[level_of(shared[place], text_start[place + 1] - text_start[place] + 1 + (uint32_t)key_count,
                             (uint32_t)levels)]++;
    }
    for (int64_t sum = 0; !error && least > 0 && sum + reached[least - 1] <= most; least--)
        sum += reached[least - 1];
    for (int64_t place = 0; place < count && !error; place++)
        if (shared[place] >= enough && !(left_out && left_out[place]) &&
            level_of(shared[place], text_start[place + 1] - text_start[place] + 1 + (uint32_t)key_count,
                     (uint32_t)levels) >= least)
            places[found++] = place;
    free(shared);
    free(reached);
    return error ? error : found;
}
