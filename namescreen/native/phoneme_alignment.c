/* Sound similarity of two phoneme codes: the arithmetic of pronunciation/alignment.py. All costs are whole numbers, and
   the few steps after them come in the same order as there, so that the results are equal to the last bit. */

#include <string.h>

#include "phonemes.h"

/* pronunciation.alignment.phone_weights; returns their sum. */
int64_t phoneme_weights(const PhonemeTable *table, const uint8_t *code, int64_t size, int32_t *weight)
{
    int64_t whole = 0;
    for (int64_t at = 0; at < size; at++) {
        int32_t here = table->weight[code[at]];
        if (at && !table->vowel[code[at]] && !table->vowel[code[at - 1]] &&
            (at + 1 == size || !table->vowel[code[at + 1]]))
            here -= (int32_t)table->clustered;
        if (!at)
            here += (int32_t)table->first;
        weight[at] = here;
        whole += here;
    }
    return whole;
}

int64_t phoneme_syllables(const PhonemeTable *table, const uint8_t *code, int64_t size)
{
    int64_t syllables = 0;
    for (int64_t at = 0; at < size; at++)
        syllables += table->vowel[code[at]];
    return syllables;
}

/* The difference of one phoneme from the nearest in each byte of a phoneme set, for every content of the byte. */
static void fill_nearest_in_set(const PhonemeTable *table, const uint8_t *difference,
                                Differences nearest[COLUMNS][BYTES], int at)
{
    for (int column = 0; column < COLUMNS; column++) {
        const uint8_t *letter = table->letter + 8 * column;
        nearest[column][0][at] = 100;
        for (int mask = 1; mask < BYTES; mask++) {
            uint8_t other = letter[__builtin_ctz((unsigned)mask)];
            int8_t before = nearest[column][mask & (mask - 1)][at];
            nearest[column][mask][at] = other && difference[other] < before ? (int8_t)difference[other] : before;
        }
    }
}

/* Prepare a reading of at most LONGEST_QUERY phonemes for alignments without a bound, of which no part of the cost is
   put aside. */
void phoneme_plain_reading(const PhonemeTable *table, const uint8_t *code, int64_t size, Reading *reading)
{
    memset(reading->kind, 0, sizeof reading->kind);
    reading->code = code;
    reading->size = size;
    reading->whole = phoneme_weights(table, code, size, reading->weight);
    reading->syllables = phoneme_syllables(table, code, size);
    for (int64_t at = 0; at < size; at++)
        reading->difference[at] = table->difference + code[at] * BYTES;
}

/* The same for a search. */
void phoneme_reading(const PhonemeTable *table, const uint8_t *code, int64_t size, Reading *reading)
{
    int8_t kind_of[BYTES];
    memset(reading, 0, sizeof *reading);
    memset(kind_of, -1, sizeof kind_of);
    memset(reading->nearest, 100, sizeof reading->nearest);
    phoneme_plain_reading(table, code, size, reading);
    for (int64_t at = 0; at < size; at++) {
        const uint8_t *difference = reading->difference[at];
        for (int bit = 0; bit < 8 * COLUMNS; bit++) {
            uint8_t letter = table->letter[bit];
            if (difference[letter] < reading->nearest[letter])
                reading->nearest[letter] = difference[letter];
        }
        if (kind_of[code[at]] < 0) {
            int64_t kind = reading->kinds++;
            kind_of[code[at]] = (int8_t)kind;
            fill_nearest_in_set(table, difference, reading->nearest_in_set[kind / GROUP], (int)(kind % GROUP));
        }
        reading->kind[at] = kind_of[code[at]];
        reading->kind_weight[reading->kind[at]] += reading->weight[at];
    }
}

/* The cost of the cheapest alignment above what no alignment avoids (`aside`); NEVER where that is above `most`. Only
   the stretch of a row that is not above it is gone through (E. Ukkonen, "Algorithms for approximate string matching",
   1985). */
int32_t phoneme_alignment_cost(const Reading *reading, const Other *other, int32_t most)
{
    const uint8_t *code = other->code;
    int64_t size = other->size, low = 0, high = 0; /* row[low] to row[high - 1] are not above `most` */
    int32_t *row = other->row, here = 0;
    while (here <= most) {
        row[high] = here;
        if (high == size) {
            high++;
            break;
        }
        here += 100 * other->weight[high] - other->aside[high];
        high++;
    }
    for (int64_t mine = 0; mine < reading->size; mine++) {
        const uint8_t *difference = reading->difference[mine];
        int32_t weight = reading->weight[mine], aside = weight * other->reading_aside[reading->kind[mine]];
        int32_t alone = 100 * weight - aside, corner = NEVER, left = NEVER;
        int64_t from = NEVER, to = 0;
        for (int64_t at = low; at <= size; at++) {
            int32_t above = at < high ? row[at] : NEVER;
            if (at > high && left > most)
                break;
            int32_t best = above + alone;
            if (at) {
                int32_t other_aside = other->aside[at - 1], other_weight = other->weight[at - 1];
                int32_t both = corner + difference[code[at - 1]] * (weight + other_weight) - aside - other_aside;
                int32_t lone = left + 100 * other_weight - other_aside;
                best = both < best ? both : best;
                best = lone < best ? lone : best;
            }
            corner = above;
            row[at] = left = best < NEVER ? best : NEVER;
            if (best <= most) {
                from = from == NEVER ? at : from;
                to = at + 1;
            }
        }
        low = from;
        high = to;
        if (from == NEVER)
            return NEVER;
    }
    return high > size ? row[size] : NEVER;
}

/* The similarity of the closest of some readings and of some others, each of at most LONGEST_QUERY phonemes and ended
   by a zero byte; 0 where it is below `least`. For one pair a bound would cost more than the alignment. */
double phonemes_closest(const PhonemeTable *table, const uint8_t *codes, int64_t readings, const uint8_t *others,
                        int64_t count, double least)
{
    uint8_t weight[LONGEST_QUERY];
    int32_t aside[LONGEST_QUERY] = {0}, row[LONGEST_QUERY + 1], weights[LONGEST_QUERY];
    Reading reading;
    Other other = {.weight = weight, .aside = aside, .row = row};
    double best = 0;
    for (; readings--; codes += reading.size + 1) {
        phoneme_plain_reading(table, codes, (int64_t)strlen((const char *)codes), &reading);
        const uint8_t *code = others;
        for (int64_t each = 0; each < count; each++, code += other.size + 1) {
            other.code = code;
            other.size = (int64_t)strlen((const char *)code);
            other.whole = phoneme_weights(table, code, other.size, weights);
            other.syllables = phoneme_syllables(table, code, other.size);
            for (int64_t at = 0; at < other.size; at++)
                weight[at] = (uint8_t)weights[at];
            double budget = 100 * (1 - least / rhythm_factor(table, other.syllables, reading.syllables));
            budget = budget * (double)(other.whole + reading.whole) + 1e-6;
            int32_t cost = phoneme_alignment_cost(&reading, &other, (int32_t)budget);
            double value = cost == NEVER ? 0 : similarity_at(table, &reading, cost, other.whole, other.syllables);
            if (value >= least)
                best = least = value;
        }
    }
    return best;
}
