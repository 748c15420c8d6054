/* The strings of a register that share most of their bigrams with one. Equal to register/bigram_index.py. */

#include <stdlib.h>

#include "kernel.h"

enum { MOST_COUNTED = UINT8_MAX, BLOCK = 64, PART = 16 };

/* `shared` says how many bigrams of the text each of `count` strings holds, with noughts after it for one block more;
   `left_out`, if not NULL, which of them are passed over; `text_start` has their boundaries. */
typedef struct {
    const uint8_t *shared, *left_out;
    const uint32_t *text_start;
    int64_t count, key_count, levels;
} Counted;

static int64_t count_shared(const uint32_t *postings, int64_t posting_count, const uint32_t *start, int64_t start_count,
                            const uint16_t *keys, int64_t key_count, int64_t count, uint8_t *shared)
{
    for (int64_t key = 0; key < key_count; key++) {
        if (keys[key] + 1 >= start_count || !within(start[keys[key]], start[keys[key] + 1], posting_count, posting_count))
            return OUT_OF_BOUNDS;
        for (int64_t at = start[keys[key]], end = start[keys[key] + 1]; at < end; at++) {
            if (postings[at] >= count)
                return OUT_OF_BOUNDS;
            shared[postings[at]] += shared[postings[at]] < MOST_COUNTED;
        }
    }
    return 0;
}

/* How alike a string is, in steps: Dice's coefficient of the bigrams, of which both strings have so many. */
INLINE int64_t level_of(const Counted *all, int64_t shared, int64_t both)
{
    uint32_t level = (uint32_t)(2 * all->levels * shared) / (uint32_t)both; /* numbers of 64 bits take much longer */
    return level < all->levels ? level : all->levels;
}

/* How many of `size` strings share at least `least`. */
INLINE int sharing(const uint8_t *block, int size, uint8_t least)
{
    uint8_t found = 0;
    for (int at = 0; at < size; at++)
        found += block[at] >= least;
    return found;
}

/* A string and how alike it is. */
typedef struct {
    uint32_t place;
    uint16_t level;
} Alike;

static int64_t count_sharing(const Counted *all, int64_t least)
{
    int64_t found = 0;
    for (int64_t block = 0; block < all->count; block += BLOCK)
        found += sharing(all->shared + block, BLOCK, (uint8_t)least);
    return found;
}

/* Write down the strings that share at least `fewest` bigrams and fewer than `end`, but for some that do not reach the
   level `least`, and count in `reached` how many have each level from that on. There is room for one PART more. Returns
   how many were written, or an error. */
static int64_t write_sharing(
    const Counted *all, int64_t fewest, int64_t end, int64_t least, int64_t *reached, Alike *alike)
{
    int64_t written = 0, found = 0, most_in_both[MOST_COUNTED + 1];
    for (int64_t shared = 0; shared <= MOST_COUNTED; shared++)
        most_in_both[shared] = least ? 2 * all->levels * shared / least : INT64_MAX;
    for (int64_t part = 0; part < all->count; part += PART) {
        if (part % BLOCK == 0 && !sharing(all->shared + part, BLOCK, (uint8_t)fewest)) {
            part += BLOCK - PART;
            continue;
        }
        if (!sharing(all->shared + part, PART, (uint8_t)fewest))
            continue;
        /* Without a branch, as none can be foreseen here; behind the last string are noughts. */
        for (int64_t place = part; place < part + PART; place++) {
            alike[written].place = (uint32_t)place;
            written += all->shared[place] >= fewest && all->shared[place] < end;
        }
    }
    for (int64_t at = 0; at < written; at++) { /* apart, so that lengths are fetched from memory side by side */
        uint32_t place = alike[at].place;
        if (all->left_out && all->left_out[place])
            continue;
        if (all->text_start[place] > all->text_start[place + 1])
            return OUT_OF_BOUNDS;
        int64_t both = (int64_t)all->text_start[place + 1] - all->text_start[place] + 1 + all->key_count;
        if (both > most_in_both[all->shared[place]])
            continue;
        int64_t level = level_of(all, all->shared[place], both);
        reached[level]++;
        alike[found++] = (Alike){place, (uint16_t)level};
    }
    return found;
}

/* The least level that no more than `most` strings reach. */
static int64_t least_level(const int64_t *reached, int64_t levels, int64_t most)
{
    int64_t least = levels + 1;
    for (int64_t sum = 0; least > 0 && sum + reached[least - 1] <= most; least--)
        sum += reached[least - 1];
    return least;
}

/* The fewest shared bigrams, at least `fewest`, with which a string can reach `level`: it has as many itself. */
static int64_t fewest_for(const Counted *all, int64_t fewest, int64_t level)
{
    while (fewest < MOST_COUNTED && level_of(all, fewest, fewest + all->key_count) < level)
        fewest++;
    return fewest;
}

/* Write down at most `most` places of strings that share at least `enough` bigrams, those of the highest levels. Most
   strings share few, and cannot reach the level that those decide which share many: they are not looked at. */
static int64_t write_most_alike(const Counted *all, int64_t enough, int64_t most, int64_t *reached, int64_t *places)
{
    int64_t many = enough, few = all->key_count < MOST_COUNTED ? all->key_count : MOST_COUNTED, found;
    while (many < few) { /* the most bigrams that more than `most` share */
        int64_t middle = (many + few + 1) / 2;
        if (count_sharing(all, middle) > most)
            many = middle;
        else
            few = middle - 1;
    }
    found = count_sharing(all, many);
    Alike *first = malloc((size_t)(found + PART) * sizeof *first), *second = NULL;
    if (!first)
        return NO_MEMORY;
    int64_t result = write_sharing(all, many, MOST_COUNTED + 1, 0, reached, first), one = result, other = 0;
    int64_t least = least_level(reached, all->levels, most), fewest = fewest_for(all, enough, least);
    if (result >= 0 && fewest < many) {
        second = malloc((size_t)(count_sharing(all, fewest) - found + PART) * sizeof *second);
        other = result = second ? write_sharing(all, fewest, many, least, reached, second) : NO_MEMORY;
    }
    if (result >= 0) {
        int64_t level = least_level(reached, all->levels, most), at = 0, beside = 0;
        result = 0;
        while (at < one || beside < other) {
            const Alike *next =
                beside == other || (at < one && first[at].place < second[beside].place) ? &first[at++] : &second[beside++];
            if (next->level >= level)
                places[result++] = next->place;
        }
    }
    free(first);
    free(second);
    return result;
}

/* `keys` are the bigrams of the text, `postings` the strings that hold each bigram, from its place in `start` on, and
   `text_start` the boundaries of the strings. Writes down at most `most` places; returns how many, or an error. */
int64_t bigrams_most_alike(const uint32_t *postings, int64_t posting_count, const uint32_t *start, int64_t start_count,
                           const uint32_t *text_start, int64_t count, const uint16_t *keys, int64_t key_count,
                           const uint8_t *left_out, int64_t levels, int64_t least_shared, int64_t most, int64_t *places)
{
    if (key_count < 1 || least_shared < 1)
        return 0;
    int64_t enough = (key_count + least_shared - 1) / least_shared;
    uint8_t *shared = calloc((size_t)count + BLOCK, sizeof *shared);
    int64_t *reached = calloc((size_t)levels + 1, sizeof *reached);
    int64_t result = NO_MEMORY;
    if (shared && reached)
        result = count_shared(postings, posting_count, start, start_count, keys, key_count, count, shared);
    if (!result) {
        Counted all = {shared, left_out, text_start, count, key_count, levels};
        result = write_most_alike(&all, enough < MOST_COUNTED ? enough : MOST_COUNTED, most, reached, places);
    }
    free(shared);
    free(reached);
    return result;
}
