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

/* Prepare a reading of at most LONGEST_QUERY phonemes. */
void phoneme_reading(const PhonemeTable *table, const uint8_t *code, int64_t size, Reading *reading)
{
    reading->code = code;
    reading->size = size;
    reading->whole = phoneme_weights(table, code, size, reading->weight);
    reading->syllables = phoneme_syllables(table, code, size);
    for (int64_t at = 0; at < size; at++)
        reading->difference[at] = table->difference + code[at] * BYTES;
}

/* The cost of the cheapest alignment; NEVER where that is above `most`. Only the stretch of a row that is not above it is
   gone through (E. Ukkonen, "Algorithms for approximate string matching", 1985). */
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
        here += 100 * other->weight[high];
        high++;
    }
    for (int64_t mine = 0; mine < reading->size; mine++) {
        const uint8_t *difference = reading->difference[mine];
        int32_t weight = reading->weight[mine], alone = 100 * weight, corner = NEVER, left = NEVER;
        int64_t from = NEVER, to = 0;
        for (int64_t at = low; at <= size; at++) {
            int32_t above = at < high ? row[at] : NEVER;
            if (at > high && left > most)
                break;
            int32_t best = above + alone;
            if (at) {
                int32_t other_weight = other->weight[at - 1], lone = left + 100 * other_weight;
                int32_t both = corner + difference[code[at - 1]] * (weight + other_weight);
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
   by a zero byte; 0 where it is below `least`. */
double phonemes_closest(const PhonemeTable *table, const uint8_t *codes, int64_t readings, const uint8_t *others,
                        int64_t count, double least)
{
    uint8_t weight[LONGEST_QUERY];
    int32_t row[LONGEST_QUERY + 1], weights[LONGEST_QUERY];
    Reading reading;
    Other other = {.weight = weight, .row = row};
    double best = 0;
    for (; readings--; codes += reading.size + 1) {
        phoneme_reading(table, codes, (int64_t)strlen((const char *)codes), &reading);
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
