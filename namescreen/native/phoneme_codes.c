/* How alike sound codes sound, by the million: the arithmetic of namescreen/pronunciation/alignment.py, one code after
   another, behind a bound that forgets the order of the sounds. All costs are whole numbers, and the few steps after
   them are made in the order in which they are made there, so that the results are the same to the last bit. */

#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "phoneme_codes.h"

enum { FEW = 256, BLOCK = 512, NEVER = 1 << 30 };

typedef struct {
    const Sounds *sounds;
    const Packed *packed;
    Ours *ours;
    Costs cheapest; /* for any of our readings */
    int64_t readings, room;
    int abreast;
    /* the other code, its sounds' weights, and what each of them must cost in any case; room for an alignment */
    const uint8_t *code, *weight;
    int64_t size, whole, syllables;
    int32_t *aside, *row;
    int8_t ours_aside[OURS]; /* what each kind of sound of ours must cost, in hundredths of its weight */
} Search;

static void make_room(Search *search, int64_t sounds)
{
    if (sounds <= search->room)
        return;
    free(search->aside);
    search->room = 2 * sounds;
    search->aside = malloc((2 * (size_t)search->room + 1) * sizeof *search->aside);
    if (!search->aside)
        abort();
    search->row = search->aside + search->room;
}

/* pronunciation.alignment.phone_weights. */
static int64_t weights_of(const Sounds *sounds, const uint8_t *code, int64_t size, int32_t *weight)
{
    int64_t whole = 0;
    for (int64_t at = 0; at < size; at++) {
        int32_t here = sounds->weight[code[at]];
        if (at && !sounds->vowel[code[at]] && !sounds->vowel[code[at - 1]] &&
            (at + 1 == size || !sounds->vowel[code[at + 1]]))
            here -= (int32_t)sounds->clustered;
        if (!at)
            here += (int32_t)sounds->first;
        weight[at] = here;
        whole += here;
    }
    return whole;
}

static int64_t syllables_in(const Sounds *sounds, const uint8_t *code, int64_t size)
{
    int64_t syllables = 0;
    for (int64_t at = 0; at < size; at++)
        syllables += sounds->vowel[code[at]];
    return syllables;
}

/* For every mask of eight bits the sum of `costs` where it is set. */
static void sums(const int32_t *costs, int32_t *sum)
{
    sum[0] = 0;
    for (int mask = 1; mask < BYTES; mask++)
        sum[mask] = sum[mask & (mask - 1)] + costs[__builtin_ctz((unsigned)mask)];
}

/* How little a letter differs from the nearest that each column has, for every content of the column. */
static void nearest_of(const Sounds *sounds, const uint8_t *difference, Together there[COLUMNS][BYTES], int at)
{
    for (int column = 0; column < COLUMNS; column++) {
        const uint8_t *letter = sounds->letter + 8 * column;
        there[column][0][at] = 100;
        for (int mask = 1; mask < BYTES; mask++) {
            uint8_t other = letter[__builtin_ctz((unsigned)mask)];
            int8_t before = there[column][mask & (mask - 1)][at];
            there[column][mask][at] = other && difference[other] < before ? (int8_t)difference[other] : before;
        }
    }
}

/* A sound that is there and not in ours is set against the nearest of ours; one of ours that is not there against the
   nearest that is, as far as its column tells: the sounds of the other columns may all be there. */
static void costs_of(const Sounds *sounds, Ours *ours)
{
    const uint8_t *code = ours->code;
    int8_t seen[BYTES];
    memset(seen, -1, sizeof seen);
    ours->kinds = 0;
    for (int column = 0; column < COLUMNS; column++) {
        int32_t extra[8] = {0};
        for (int bit = 0; bit < 8; bit++) {
            uint8_t letter = sounds->letter[8 * column + bit];
            if (letter)
                extra[bit] = lightest(sounds, letter) * ours->nearest[letter];
        }
        sums(extra, ours->costs[column]);
    }
    memset(ours->nearest_there, 0, sizeof ours->nearest_there);
    memset(ours->kind_weight, 0, sizeof ours->kind_weight);
    for (int64_t at = 0; at < ours->size; at++) {
        if (seen[code[at]] < 0) {
            seen[code[at]] = (int8_t)ours->kinds;
            ours->of_kind[ours->kinds] = ours->difference[at];
            nearest_of(sounds, ours->difference[at], ours->nearest_there[ours->kinds / GROUP], ours->kinds % GROUP);
            ours->kinds++;
        }
        ours->kind[at] = seen[code[at]];
        ours->kind_weight[ours->kind[at]] += ours->weight[at];
    }
    for (int bit = 0; bit < 8 * COLUMNS; bit++) {
        uint8_t letter = sounds->letter[bit];
        if (!letter || seen[letter] < 0)
            continue;
        Together(*there)[BYTES] = ours->nearest_there[seen[letter] / GROUP];
        int home = bit / 8, kind = seen[letter] % GROUP;
        int32_t elsewhere = 100, weight = ours->kind_weight[seen[letter]];
        for (int column = 0; column < COLUMNS; column++)
            if (column != home && there[column][BYTES - 1][kind] < elsewhere)
                elsewhere = there[column][BYTES - 1][kind];
        for (int mask = 0; mask < BYTES; mask++)
            ours->costs[home][mask] += weight * (there[home][mask][kind] < elsewhere ? there[home][mask][kind] : elsewhere);
    }
}

static void ours_of(const Sounds *sounds, const uint8_t *code, int64_t size, Ours *ours)
{
    ours->code = code;
    ours->size = size;
    ours->whole = weights_of(sounds, code, size, ours->weight);
    ours->syllables = syllables_in(sounds, code, size);
    memset(ours->nearest, 100, sizeof ours->nearest);
    for (int64_t at = 0; at < size; at++) {
        const uint8_t *difference = ours->difference[at] = sounds->difference + code[at] * BYTES;
        for (int bit = 0; bit < 8 * COLUMNS; bit++) {
            uint8_t letter = sounds->letter[bit];
            if (difference[letter] < ours->nearest[letter])
                ours->nearest[letter] = difference[letter];
        }
    }
    costs_of(sounds, ours);
}

/* `codes` are our readings, `readings` of them, each ended by a zero byte. */
static void begin(Search *search, const Sounds *sounds, const Packed *packed, const uint8_t *codes, int64_t readings)
{
    search->sounds = sounds;
    search->packed = packed;
    search->readings = readings;
    search->abreast = sounds_abreast();
    search->room = 0;
    search->aside = NULL;
    search->ours = aligned_alloc(64, ((size_t)readings * sizeof *search->ours + 63) / 64 * 64);
    if (!search->ours)
        abort();
    make_room(search, FEW);
    for (int64_t reading = 0; reading < readings; reading++) {
        int64_t size = (int64_t)strlen((const char *)codes);
        ours_of(sounds, codes, size, &search->ours[reading]);
        for (int column = 0; column < COLUMNS; column++)
            for (int mask = 0; mask < BYTES; mask++) {
                int32_t cost = search->ours[reading].costs[column][mask];
                if (!reading || cost < search->cheapest[column][mask])
                    search->cheapest[column][mask] = cost;
            }
        codes += size + 1;
    }
}

static void end(Search *search)
{
    free(search->ours);
    free(search->aside);
}

INLINE double rhythm_of(const Search *search, const Ours *ours, int64_t syllables)
{
    int64_t apart = llabs(syllables - ours->syllables);
    int64_t more = syllables > ours->syllables ? syllables : ours->syllables;
    return 1.0 - search->sounds->rhythm * (double)apart / (double)(more ? more : 1);
}

/* What is left of a reading after an alignment that costs `spent`; the steps of pronunciation.batch._share. */
INLINE double share(const Search *search, const Ours *ours, int64_t spent, int64_t whole, int64_t syllables)
{
    whole = 100 * (whole + ours->whole);
    return (whole ? 1.0 - (double)spent / (double)whole : 1.0) * rhythm_of(search, ours, syllables);
}

/* What the cheapest alignment costs (pronunciation.batch._spent) above what it costs in any case (`aside`). NEVER where
   that is above `most`. Only the stretch of a row that is not above it is gone through (E. Ukkonen, "Algorithms for
   approximate string matching", 1985). */
static int32_t spent(const Search *search, const Ours *ours, int32_t most)
{
    const uint8_t *code = search->code;
    int64_t size = search->size, low = 0, high = 0; /* what is not above `most`: row[low] to row[high - 1] */
    int32_t *row = search->row, here = 0;
    while (here <= most) {
        row[high] = here;
        if (high == size) {
            high++;
            break;
        }
        here += 100 * search->weight[high] - search->aside[high];
        high++;
    }
    for (int64_t mine = 0; mine < ours->size; mine++) {
        const uint8_t *difference = ours->difference[mine];
        int32_t weight = ours->weight[mine], aside = weight * search->ours_aside[ours->kind[mine]];
        int32_t alone = 100 * weight - aside, corner = NEVER, left = NEVER;
        int64_t from = NEVER, to = 0;
        for (int64_t at = low; at <= size; at++) {
            int32_t above = at < high ? row[at] : NEVER;
            if (at > high && left > most)
                break;
            int32_t best = above + alone;
            if (at) {
                int32_t theirs = search->aside[at - 1], their_weight = search->weight[at - 1];
                int32_t both = corner + difference[code[at - 1]] * (weight + their_weight) - aside - theirs;
                int32_t lone = left + 100 * their_weight - theirs;
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

/* Turns to another code. */
INLINE void turn_to(Search *search, int64_t place)
{
    const Packed *packed = search->packed;
    search->code = packed->blob + packed->start[place];
    search->size = packed->start[place + 1] - packed->start[place];
    make_room(search, search->size);
    search->weight = packed->weights + packed->start[place];
    search->whole = packed->whole[place];
    if (search->whole == UINT16_MAX) { /* or more */
        search->whole = 0;
        for (int64_t at = 0; at < search->size; at++)
            search->whole += search->weight[at];
    }
    search->syllables = packed->syllables[place];
    if (search->syllables == BYTES - 1) /* or more */
        search->syllables = syllables_in(search->sounds, search->code, search->size);
}

INLINE int64_t cost_of(const int32_t (*costs)[BYTES], const uint8_t *bytes)
{
    int32_t cost = 0;
    for (int column = 0; column < COLUMNS; column++)
        cost += costs[column][bytes[column]];
    return cost;
}

INLINE void bytes_of(const Packed *packed, int64_t place, uint8_t *bytes)
{
    for (int column = 0; column < COLUMNS; column += 2) {
        uint16_t present = packed->present[(column / 2) * packed->count + place];
        bytes[column] = (uint8_t)present;
        bytes[column + 1] = (uint8_t)(present >> 8);
    }
}

/* What aligning one of our readings with a code costs in any case by our sounds, in whatever order: each must be set
   against another, or against nothing. Fills in the shares of it. */
INLINE int64_t cost_of_ours(Search *search, const Ours *ours, const uint8_t *bytes)
{
    int64_t cost = 0;
    for (int64_t group = 0; group * GROUP < ours->kinds; group++) {
        Together nearest = ours->nearest_there[group][0][bytes[0]];
        for (int column = 1; column < COLUMNS; column++) {
            Together there = ours->nearest_there[group][column][bytes[column]];
            Together less = there < nearest;
            nearest = (there & less) | (nearest & ~less);
        }
        memcpy(search->ours_aside + group * GROUP, &nearest, GROUP);
        for (int64_t kind = group * GROUP; kind < ours->kinds && kind < (group + 1) * GROUP; kind++)
            cost += ours->kind_weight[kind] * search->ours_aside[kind];
    }
    return cost;
}

/* The same by its own sounds. */
INLINE int64_t cost_of_theirs(const Packed *packed, const Ours *ours, int64_t place)
{
    int64_t cost = 0;
    for (int64_t at = packed->start[place]; at < packed->start[place + 1]; at++)
        cost += packed->weights[at] * ours->nearest[packed->blob[at]];
    return cost;
}

/* How alike one of our readings sounds to the code turned to, given `cost_of_ours`; 0 where an alignment costs above
   `most`. */
INLINE double alike(Search *search, const Ours *ours, int64_t least, int64_t most)
{
    for (int64_t at = 0; at < search->size; at++)
        least += search->aside[at] = search->weight[at] * ours->nearest[search->code[at]];
    if (least > most)
        return 0;
    int32_t more = spent(search, ours, most - least < NEVER ? (int32_t)(most - least) : NEVER - 1);
    return more == NEVER ? 0 : share(search, ours, least + more, search->whole, search->syllables);
}

static void set_least(Search *search, double least)
{
    for (int64_t reading = 0; reading < search->readings; reading++) {
        Ours *ours = &search->ours[reading];
        for (int64_t syllables = 0; syllables < BYTES; syllables++)
            ours->spare[syllables] = 100 * (1 - least / rhythm_of(search, ours, syllables));
    }
}

/* How alike one of our readings sounds to a code, or 0 if that is less than `set_least` was told. */
INLINE double heard(Search *search, const Ours *ours, int64_t place, const uint8_t *bytes, int64_t most)
{
    int64_t least = cost_of_ours(search, ours, bytes);
    if (least + cost_of_theirs(search->packed, ours, place) > most)
        return 0;
    turn_to(search, place);
    return alike(search, ours, least, most);
}

/* Raise the best of each of some places, BLOCK at most, to how alike one of our readings sounds to it, where that may be
   as much as `set_least` was told; `at` tells where its best stands. */
static void raise_to(Search *search, const Ours *ours, const int64_t *places, int64_t count, const int64_t *at,
                     double *best)
{
    const Packed *packed = search->packed;
    uint8_t bytes[COLUMNS];
    int32_t costs[BLOCK];
    if (search->abreast)
        sounds_aligned(packed, ours, places, count, costs);
    for (int64_t each = 0; each < count; each++) {
        int64_t place = places[each], most = may_cost(packed, ours, place);
        double value = 0;
        if (!search->abreast || costs[each] < 0) {
            bytes_of(packed, place, bytes);
            value = heard(search, ours, place, bytes, most);
        } else if (costs[each] <= most)
            value = share(search, ours, costs[each], packed->whole[place], packed->syllables[place]);
        best[at[each]] = value > best[at[each]] ? value : best[at[each]];
    }
}

/* How alike the closest of our readings sounds to the closest of those of each word, as `ids` lists them; less than
   `least` may come out as 0: sounds.Codes.of. */
void sounds_of(const Sounds *sounds, const Packed *packed, const uint8_t *codes, int64_t readings, const uint32_t *ids,
               const uint32_t *ids_start, const int64_t *words, int64_t count, double least, double *values)
{
    Search search;
    int64_t places[BLOCK], at[BLOCK], held = 0;
    begin(&search, sounds, packed, codes, readings);
    set_least(&search, least);
    for (int64_t word = 0; word < count; word++) {
        values[word] = 0;
        for (int64_t id = ids_start[words[word]]; id < ids_start[words[word] + 1]; id++) {
            if (held == BLOCK) {
                for (int64_t reading = 0; reading < readings; reading++)
                    raise_to(&search, &search.ours[reading], places, held, at, values);
                held = 0;
            }
            places[held] = ids[id];
            at[held++] = word;
        }
    }
    for (int64_t reading = 0; reading < readings; reading++)
        raise_to(&search, &search.ours[reading], places, held, at, values);
    end(&search);
}

/* Every code that sounds at least `least` alike to one of our readings, with how alike: sounds.Codes.near. Looks
   through `given` places, or, where that is NULL, all from `low` on; `count` of them. What is left after each sieve is
   written down without asking, as a processor guesses wrong which codes these will be. */
int64_t sounds_near(const Sounds *sounds, const Packed *packed, const uint8_t *codes, int64_t readings,
                    const int64_t *given, int64_t low, int64_t count, double least, int64_t *places, double *values)
{
    Search search;
    begin(&search, sounds, packed, codes, readings);
    int64_t found = 0, heaviest = 0, size = packed->count ? packed->whole[packed->count - 1] + 1 : 1;
    set_least(&search, least);
    for (int64_t reading = 0; reading < readings; reading++)
        heaviest = search.ours[reading].whole > heaviest ? search.ours[reading].whole : heaviest;
    /* What an alignment may cost at most, by the weight of the other code. */
    int32_t *at_most = malloc((size_t)size * sizeof *at_most);
    if (!at_most)
        abort();
    for (int64_t whole = 0; whole < size; whole++)
        at_most[whole] = (int32_t)(100 * (1 - least) * (double)(whole + heaviest) + 1e-6);
    int64_t block[BLOCK], first[BLOCK], second[BLOCK], chosen[BLOCK];
    double best[BLOCK];
    uint8_t bytes[COLUMNS];
    int sieve = !given && search.abreast;
    for (int64_t reading = 0; sieve && count && reading < readings; reading++)
        sounds_sieve_ready(sounds, packed, &search.ours[reading], low + count - 1);
    for (int64_t from = 0; from < count; from += BLOCK) {
        int64_t here = count - from < BLOCK ? count - from : BLOCK, passed = 0;
        int64_t sieved = sieve ? here / ABREAST * ABREAST : 0;
        for (int64_t at = 0; at < here; at++) {
            block[at] = given ? given[from + at] : low + from + at;
            best[at] = 0;
        }
        for (int64_t at = sieved; at < here; at++) {
            bytes_of(packed, block[at], bytes);
            first[passed] = at;
            passed += cost_of(search.cheapest, bytes) <= at_most[packed->whole[block[at]]];
        }
        for (int64_t reading = 0; reading < readings; reading++) {
            const Ours *ours = &search.ours[reading];
            int64_t left = sieved ? sounds_sieve(packed, ours, low + from, sieved, chosen) : 0;
            for (int64_t at = 0; at < left; at++)
                second[at] = chosen[at] - low - from;
            for (int64_t at = 0; at < passed; at++) {
                bytes_of(packed, block[first[at]], bytes);
                second[left] = first[at];
                chosen[left] = block[first[at]];
                left += cost_of(ours->costs, bytes) <= may_cost(packed, ours, block[first[at]]);
            }
            raise_to(&search, ours, chosen, left, second, best);
        }
        for (int64_t at = 0; at < here; at++)
            if (best[at] >= least) {
                places[found] = block[at];
                values[found++] = best[at];
            }
    }
    free(at_most);
    end(&search);
    return found;
}

/* How alike the closest of our readings and of another word's sound, or 0 if that is less than `least`; all of OURS
   sounds at most: closeness.sound.sound_of_words. For one pair a bound would cost more than the alignment. */
double sounds_alike(const Sounds *sounds, const uint8_t *codes, int64_t readings, const uint8_t *others, int64_t count,
                    double least)
{
    uint8_t weight[OURS];
    int32_t aside[OURS] = {0}, row[OURS + 1], weights[OURS];
    Ours ours;
    Search search = {.sounds = sounds, .ours = &ours, .weight = weight, .aside = aside, .row = row};
    double best = 0;
    memset(ours.kind, 0, sizeof ours.kind);
    for (; readings--; codes += ours.size + 1) {
        ours.size = (int64_t)strlen((const char *)codes);
        ours.whole = weights_of(sounds, codes, ours.size, ours.weight);
        ours.syllables = syllables_in(sounds, codes, ours.size);
        for (int64_t at = 0; at < ours.size; at++)
            ours.difference[at] = sounds->difference + codes[at] * BYTES;
        const uint8_t *code = others;
        for (int64_t other = 0; other < count; other++, code += search.size + 1) {
            search.code = code;
            search.size = (int64_t)strlen((const char *)code);
            search.whole = weights_of(sounds, code, search.size, weights);
            search.syllables = syllables_in(sounds, code, search.size);
            for (int64_t at = 0; at < search.size; at++)
                weight[at] = (uint8_t)weights[at];
            double spare = 100 * (1 - least / rhythm_of(&search, &ours, search.syllables));
            int32_t cost = spent(&search, &ours, (int32_t)(spare * (double)(search.whole + ours.whole) + 1e-6));
            double value = cost == NEVER ? 0 : share(&search, &ours, cost, search.whole, search.syllables);
            if (value >= least)
                best = least = value;
        }
    }
    return best;
}
