/* The bounds of sounds.c for many codes in one step, with the instructions of AVX2, where the processor has them. They
   only leave codes out that cannot be alike enough: which they are does not change the result. */

#include <string.h>

#include "sounds.h"

#if defined(__x86_64__) && defined(__GNUC__)

#include <immintrin.h>

#define WIDE __attribute__((target("avx2")))

enum { NIBBLE = 4, FULL = UINT8_MAX, SYLLABLES = GROUP };

int sounds_abreast(void)
{
    return __builtin_cpu_supports("avx2");
}

/* What an alignment may cost at most, by syllables, the last for all that have more; below 0 for never. */
static double may_cost_at_most(const Ours *ours, int syllables, int64_t whole)
{
    double spare = ours->spare[syllables];
    if (syllables == SYLLABLES - 1)
        for (int more = SYLLABLES; more < BYTES; more++)
            spare = ours->spare[more] > spare ? ours->spare[more] : spare;
    return spare * (double)(whole + ours->whole) + 1e-6;
}

/* What each content of four bits costs at least, by our sounds that are not among them and by those that are not in
   ours. Costs are counted in units in which the most that an alignment may cost fits a byte. */
void sounds_sieve_ready(const Sounds *sounds, const Packed *packed, Ours *ours, const uint8_t *code, int64_t last)
{
    int32_t cost[NIBBLES][GROUP] = {{0}};
    double most = 0;
    for (int syllables = 0; syllables < SYLLABLES; syllables++) {
        double may = may_cost_at_most(ours, syllables, packed->whole[last]);
        most = may > most ? may : most;
    }
    ours->unit = (int64_t)most / (FULL - 1) + 1;
    uint8_t seen[BYTES] = {0};
    for (int64_t at = 0; at < ours->size; at++)
        seen[code[at]] = 1;
    for (int bit = 0; bit < NIBBLE * NIBBLES; bit++) {
        uint8_t letter = sounds->letter[bit];
        int home = bit / NIBBLE;
        int32_t theirs = letter && !seen[letter] ? lightest(sounds, letter) * ours->nearest[letter] : 0, weight = 0;
        const uint8_t *difference = sounds->difference + letter * BYTES;
        uint8_t elsewhere = 100;
        for (int64_t at = 0; at < ours->size; at++)
            weight += letter && code[at] == letter ? ours->weight[at] : 0;
        for (int other = 0; other < NIBBLE * NIBBLES; other++)
            if (other / NIBBLE != home && sounds->letter[other] && difference[sounds->letter[other]] < elsewhere)
                elsewhere = difference[sounds->letter[other]];
        for (int mask = 0; mask < GROUP; mask++) {
            uint8_t nearest = elsewhere;
            for (int other = 0; other < NIBBLE; other++) {
                uint8_t there = sounds->letter[home * NIBBLE + other];
                if (mask >> other & 1 && there && difference[there] < nearest)
                    nearest = difference[there];
            }
            cost[home][mask] += weight * nearest + (mask >> bit % NIBBLE & 1 ? theirs : 0);
        }
    }
    for (int nibble = 0; nibble < NIBBLES; nibble++)
        for (int mask = 0; mask < GROUP; mask++) {
            int64_t units = cost[nibble][mask] / ours->unit;
            ours->sieve[nibble][mask] = units > FULL ? FULL : (uint8_t)units;
        }
}

WIDE static __m256i twice(const uint8_t *sixteen)
{
    return _mm256_broadcastsi128_si256(_mm_loadu_si128((const __m128i *)sixteen));
}

/* The places from `low` on, of `count` codes, a multiple of ABREAST, that one of our readings may be alike to; as many
   as are told. Codes are in order of their weight, so what the last of a few may cost bounds the others'. */
WIDE int64_t sounds_sieve(const Packed *packed, const Ours *ours, int64_t low, int64_t count, int64_t *places)
{
    const __m256i four = _mm256_set1_epi8(GROUP - 1), byte = _mm256_set1_epi16(BYTES - 1), zero = _mm256_setzero_si256();
    const __m256i last_syllables = _mm256_set1_epi8(SYLLABLES - 1);
    __m256i table[NIBBLES], limit = zero;
    int64_t found = 0, weight = -1;
    for (int nibble = 0; nibble < NIBBLES; nibble++)
        table[nibble] = twice(ours->sieve[nibble]);
    for (int64_t place = low; place < low + count; place += ABREAST) {
        if (packed->whole[place + ABREAST - 1] != weight) {
            uint8_t limits[SYLLABLES]; /* one above what it may cost, in units */
            weight = packed->whole[place + ABREAST - 1];
            for (int syllables = 0; syllables < SYLLABLES; syllables++) {
                double may = may_cost_at_most(ours, syllables, weight);
                limits[syllables] = may < 0 ? 0 : (uint8_t)((int64_t)may / ours->unit + 1);
            }
            limit = twice(limits);
        }
        __m256i sum = zero;
        for (int column = 0; column < NIBBLES / 4; column++) {
            const uint16_t *present = packed->present + column * packed->count + place;
            __m256i first = _mm256_loadu_si256((const __m256i *)present);
            __m256i second = _mm256_loadu_si256((const __m256i *)(present + ABREAST / 2));
            __m256i bytes[2] = {
                _mm256_packus_epi16(_mm256_and_si256(first, byte), _mm256_and_si256(second, byte)),
                _mm256_packus_epi16(_mm256_srli_epi16(first, 8), _mm256_srli_epi16(second, 8)),
            };
            for (int half = 0; half < 2; half++) {
                const __m256i *costs = table + 4 * column + 2 * half;
                __m256i high = _mm256_and_si256(_mm256_srli_epi16(bytes[half], 4), four);
                sum = _mm256_adds_epu8(sum, _mm256_shuffle_epi8(costs[0], _mm256_and_si256(bytes[half], four)));
                sum = _mm256_adds_epu8(sum, _mm256_shuffle_epi8(costs[1], high));
            }
        }
        sum = _mm256_permute4x64_epi64(sum, 0xd8); /* undoes the order that packing gives */
        __m256i syllables = _mm256_loadu_si256((const __m256i *)(packed->syllables + place));
        __m256i may = _mm256_shuffle_epi8(limit, _mm256_min_epu8(syllables, last_syllables));
        __m256i above = _mm256_cmpeq_epi8(_mm256_subs_epu8(may, sum), zero);
        uint32_t passed = ~(uint32_t)_mm256_movemask_epi8(above);
        for (; passed; passed &= passed - 1)
            places[found++] = place + __builtin_ctz(passed);
    }
    return found;
}

/* The sum of sixteen products of bytes, those of `ours` below 128. */
WIDE static inline int32_t products(__m128i theirs, __m128i ours)
{
    __m128i sums = _mm_madd_epi16(_mm_maddubs_epi16(theirs, ours), _mm_set1_epi16(1));
    sums = _mm_add_epi32(sums, _mm_shuffle_epi32(sums, 0x4e));
    return _mm_cvtsi128_si32(_mm_add_epi32(sums, _mm_shuffle_epi32(sums, 0xb1)));
}

/* Of these places those that stay, in their order, where every sound is set against the nearest of the other reading's,
   in whatever order they stand: cost_of_ours and cost_of_theirs of sounds.c together. */
WIDE int64_t sounds_bounded(const Packed *packed, const Ours *ours, int64_t *places, int64_t count)
{
    static const uint8_t whole[2 * GROUP] = {FULL, FULL, FULL, FULL, FULL, FULL, FULL, FULL,
                                             FULL, FULL, FULL, FULL, FULL, FULL, FULL, FULL};
    const __m128i *nearest = (const __m128i *)(ours->nearest + 4 * GROUP); /* letters are 64 to 127 */
    const __m128i *there = (const __m128i *)ours->nearest_there;
    int64_t end = packed->start[packed->count], left = 0;
    __m128i table[4], weight[2][OURS / GROUP];
    for (int part = 0; part < 4; part++)
        table[part] = _mm_loadu_si128(nearest + part);
    for (int group = 0; group < OURS / GROUP; group++) {
        const __m128i *weights = (const __m128i *)(ours->kind_weight + group * GROUP);
        for (int half = 0; half < 2; half++)
            weight[half][group] =
                _mm_packs_epi32(_mm_loadu_si128(weights + 2 * half), _mm_loadu_si128(weights + 2 * half + 1));
    }
    for (int64_t at = 0; at < count; at++) {
        int64_t place = places[at], start = packed->start[place], size = packed->start[place + 1] - start, cost = 0;
        if (start + (size + GROUP - 1) / GROUP * GROUP > end) { /* nothing may be read from there */
            places[left++] = place;
            continue;
        }
        for (int64_t from = start; from < start + size; from += GROUP) {
            int64_t here = start + size - from < GROUP ? start + size - from : GROUP;
            __m128i code = _mm_loadu_si128((const __m128i *)(packed->blob + from)), value = _mm_setzero_si128();
            for (int part = 0; part < 4; part++) {
                /* 0 to 15 stays that in its low bits; the rest has its highest bit set and gives 0 */
                __m128i index = _mm_xor_si128(code, _mm_set1_epi8((char)((4 + part) * GROUP)));
                index = _mm_adds_epu8(index, _mm_set1_epi8(0x70));
                value = _mm_or_si128(value, _mm_shuffle_epi8(table[part], index));
            }
            __m128i weights = _mm_loadu_si128((const __m128i *)(packed->weights + from));
            weights = _mm_and_si128(weights, _mm_loadu_si128((const __m128i *)(whole + GROUP - here)));
            cost += products(weights, value);
        }
        for (int group = 0; group * GROUP < ours->kinds; group++) {
            const __m128i *column = there + group * COLUMNS * BYTES;
            __m128i least = _mm_set1_epi8(100);
            for (int each = 0; each < COLUMNS; each++, column += BYTES) {
                uint16_t present = packed->present[(each / 2) * packed->count + place];
                least = _mm_min_epu8(least, _mm_load_si128(column + (each % 2 ? present >> 8 : present & (BYTES - 1))));
            }
            __m128i sums = _mm_add_epi32(
                _mm_madd_epi16(_mm_unpacklo_epi8(least, _mm_setzero_si128()), weight[0][group]),
                _mm_madd_epi16(_mm_unpackhi_epi8(least, _mm_setzero_si128()), weight[1][group]));
            sums = _mm_add_epi32(sums, _mm_shuffle_epi32(sums, 0x4e));
            cost += _mm_cvtsi128_si32(_mm_add_epi32(sums, _mm_shuffle_epi32(sums, 0xb1)));
        }
        places[left] = place;
        left += cost <= may_cost(packed, ours, place);
    }
    return left;
}

#else

int sounds_abreast(void)
{
    return 0;
}

void sounds_sieve_ready(const Sounds *sounds, const Packed *packed, Ours *ours, const uint8_t *code, int64_t last)
{
    (void)sounds, (void)packed, (void)ours, (void)code, (void)last;
}

int64_t sounds_sieve(const Packed *packed, const Ours *ours, int64_t low, int64_t count, int64_t *places)
{
    (void)packed, (void)ours, (void)low, (void)count, (void)places;
    return 0;
}

int64_t sounds_bounded(const Packed *packed, const Ours *ours, int64_t *places, int64_t count)
{
    (void)packed, (void)ours, (void)places;
    return count;
}

#endif
