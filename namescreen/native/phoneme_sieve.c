/* Many codes in one step, with the instructions of AVX2, where the processor has them: a sieve that leaves codes out that
   cannot be alike enough, and alignments side by side, which cost little more than the bounds that phoneme_codes.c puts before
   them. */

#include <string.h>

#include "phoneme_codes.h"

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
void sounds_sieve_ready(const Sounds *sounds, const Packed *packed, Ours *ours, int64_t last)
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
        seen[ours->code[at]] = 1;
    for (int bit = 0; bit < NIBBLE * NIBBLES; bit++) {
        uint8_t letter = sounds->letter[bit];
        int home = bit / NIBBLE;
        int32_t theirs = letter && !seen[letter] ? lightest(sounds, letter) * ours->nearest[letter] : 0, weight = 0;
        const uint8_t *difference = sounds->difference + letter * BYTES;
        uint8_t elsewhere = 100;
        for (int64_t at = 0; at < ours->size; at++)
            weight += letter && ours->code[at] == letter ? ours->weight[at] : 0;
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
    for (int letter = 0; letter < 4 * GROUP; letter++)
        ours->first[letter] = (uint8_t)(sounds->first * ours->nearest[4 * GROUP + letter] / ours->unit);
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

/* Where letters stand in one of the four parts of a table for the letters 64 to 127: their low bits, or, for those of
   another part, a number with its highest bit set, which finds 0. */
WIDE static inline __m256i index_in(int part, __m256i letters)
{
    __m256i own = _mm256_xor_si256(letters, _mm256_set1_epi8((char)((4 + part) * GROUP)));
    return _mm256_adds_epu8(own, _mm256_set1_epi8(0x70));
}

/* The places from `low` on, of `count` codes, a multiple of ABREAST, that one of our readings may be alike to; as many
   as are told. Codes are in order of their weight, so what the last of a few may cost bounds the others'. */
WIDE int64_t sounds_sieve(const Packed *packed, const Ours *ours, int64_t low, int64_t count, int64_t *places)
{
    const __m256i four = _mm256_set1_epi8(GROUP - 1), byte = _mm256_set1_epi16(BYTES - 1), zero = _mm256_setzero_si256();
    const __m256i last_syllables = _mm256_set1_epi8(SYLLABLES - 1);
    int64_t found = 0, weight = -1;
    __m256i table[NIBBLES], first_table[4], limit = zero;
    for (int nibble = 0; nibble < NIBBLES; nibble++)
        table[nibble] = twice(ours->sieve[nibble]);
    for (int part = 0; part < 4; part++)
        first_table[part] = twice(ours->first + part * GROUP);
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
        __m256i first = _mm256_loadu_si256((const __m256i *)(packed->first + place));
        for (int part = 0; part < 4; part++)
            sum = _mm256_adds_epu8(sum, _mm256_shuffle_epi8(first_table[part], index_in(part, first)));
        __m256i syllables = _mm256_loadu_si256((const __m256i *)(packed->syllables + place));
        __m256i may = _mm256_shuffle_epi8(limit, _mm256_min_epu8(syllables, last_syllables));
        __m256i above = _mm256_cmpeq_epi8(_mm256_subs_epu8(may, sum), zero);
        uint32_t passed = ~(uint32_t)_mm256_movemask_epi8(above);
        for (; passed; passed &= passed - 1)
            places[found++] = place + __builtin_ctz(passed);
    }
    return found;
}

/* Sixteen rows of sixteen bytes, turned into columns: each round deals the two halves of the rows out in turn. */
WIDE static inline void turned(__m128i *rows)
{
    for (int round = 0; round < 4; round++) {
        __m128i dealt[GROUP];
        for (int row = 0; row < GROUP / 2; row++) {
            dealt[2 * row] = _mm_unpacklo_epi8(rows[row], rows[row + GROUP / 2]);
            dealt[2 * row + 1] = _mm_unpackhi_epi8(rows[row], rows[row + GROUP / 2]);
        }
        memcpy(rows, dealt, sizeof dealt);
    }
}

/* Differences of each kind of our sounds from sixteen codes' sounds, place by place; the letters are 64 to 127. */
WIDE static inline void differences(const Ours *ours, const __m128i *codes, int64_t size,
                                    __m128i (*difference)[GROUP])
{
    for (int64_t at = 0; at < size; at += 2) {
        __m256i two = _mm256_inserti128_si256(_mm256_castsi128_si256(codes[at]), codes[at + 1], 1), index[4];
        for (int part = 0; part < 4; part++)
            index[part] = index_in(part, two);
        for (int64_t kind = 0; kind < ours->kinds; kind++) {
            __m256i found = _mm256_setzero_si256();
            for (int part = 0; part < 4; part++)
                found = _mm256_or_si256(
                    found, _mm256_shuffle_epi8(twice(ours->of_kind[kind] + (4 + part) * GROUP), index[part]));
            _mm256_storeu_si256((__m256i *)&difference[kind][at], found);
        }
    }
}

/* What the cheapest alignment of one of our readings with each code costs: sixteen codes side by side. Negative for
   codes that are too long for it. */
WIDE void sounds_aligned(const Packed *packed, const Ours *ours, const int64_t *places, int64_t count, int32_t *costs)
{
    int64_t end = packed->start[packed->count];
    for (int64_t from = 0; from < count; from += GROUP) {
        int64_t sizes[GROUP], longest = 0;
        __m128i codes[GROUP], bytes[GROUP], difference[OURS][GROUP];
        for (int lane = 0; lane < GROUP; lane++) {
            int64_t place = places[from + lane < count ? from + lane : from], start = packed->start[place];
            sizes[lane] = packed->start[place + 1] - start;
            if (sizes[lane] > GROUP || start + GROUP > end) { /* nothing may be read from there */
                sizes[lane] = -1;
                codes[lane] = bytes[lane] = _mm_setzero_si128();
                continue;
            }
            longest = sizes[lane] > longest ? sizes[lane] : longest;
            codes[lane] = _mm_loadu_si128((const __m128i *)(packed->blob + start));
            bytes[lane] = _mm_loadu_si128((const __m128i *)(packed->weights + start));
        }
        turned(codes);
        turned(bytes);
        differences(ours, codes, longest, difference);
        uint16_t spent[GROUP + 1][GROUP];
        __m256i row[GROUP + 1], weight[GROUP], alone[GROUP];
        row[0] = _mm256_setzero_si256();
        for (int64_t at = 0; at < longest; at++) {
            weight[at] = _mm256_cvtepu8_epi16(bytes[at]);
            alone[at] = _mm256_mullo_epi16(weight[at], _mm256_set1_epi16(100));
            row[at + 1] = _mm256_add_epi16(row[at], alone[at]);
        }
        for (int64_t mine = 0; mine < ours->size; mine++) {
            const __m128i *apart = difference[ours->kind[mine]];
            __m256i own = _mm256_set1_epi16((int16_t)ours->weight[mine]);
            __m256i own_alone = _mm256_set1_epi16((int16_t)(100 * ours->weight[mine]));
            __m256i corner = row[0], left = row[0] = _mm256_add_epi16(row[0], own_alone);
            for (int64_t at = 0; at < longest; at++) {
                __m256i above = row[at + 1];
                __m256i both = _mm256_mullo_epi16(_mm256_cvtepu8_epi16(apart[at]), _mm256_add_epi16(own, weight[at]));
                __m256i best = _mm256_min_epu16(_mm256_add_epi16(corner, both), _mm256_add_epi16(above, own_alone));
                left = row[at + 1] = _mm256_min_epu16(best, _mm256_add_epi16(left, alone[at]));
                corner = above;
            }
        }
        for (int64_t at = 0; at <= longest; at++)
            _mm256_storeu_si256((__m256i *)spent[at], row[at]);
        for (int lane = 0; lane < GROUP && from + lane < count; lane++)
            costs[from + lane] = sizes[lane] < 0 ? -1 : spent[sizes[lane]][lane];
    }
}

#else

int sounds_abreast(void)
{
    return 0;
}

void sounds_sieve_ready(const Sounds *sounds, const Packed *packed, Ours *ours, int64_t last)
{
    (void)sounds, (void)packed, (void)ours, (void)last;
}

int64_t sounds_sieve(const Packed *packed, const Ours *ours, int64_t low, int64_t count, int64_t *places)
{
    (void)packed, (void)ours, (void)low, (void)count, (void)places;
    return 0;
}

void sounds_aligned(const Packed *packed, const Ours *ours, const int64_t *places, int64_t count, int32_t *costs)
{
    (void)packed, (void)ours, (void)places, (void)count, (void)costs;
}

#endif
