/* How alike sound codes sound, by the million: the arithmetic of namescreen/pronunciation/alignment.py, one code after
   another, behind a bound that forgets the order of the sounds. All costs are whole numbers, and the few steps after
   them are made in the order in which they are made there, so that the results are the same to the last bit. */

#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "kernel.h"

enum { BYTES = 256, OURS = 64, FEW = 256, COLUMNS = 6, NEVER = 1 << 30 };

/* The same as sounds.Sounds in namescreen/register/sounds.py: what holds of every code. */
typedef struct {
    const uint8_t *difference; /* of two letters, in hundredths: BYTES rows of BYTES */
    const uint8_t *weight;     /* of a letter, in quarters of a full phone */
    const uint8_t *vowel;      /* 1 for a vowel */
    const uint8_t *bit;        /* of a letter, among those of `present` */
    int64_t first, clustered;  /* added to the first sound; taken from one that is easily lost */
    double rhythm;
} Sounds;

/* The same as sounds.Packed there. */
typedef struct {
    const uint8_t *blob;
    const uint32_t *start;
    const uint16_t *whole, *present; /* `present` in three columns of `count` */
    const uint8_t *syllables;
    int64_t count;
} Packed;

/* What the sounds that a code has and lacks cost at least, eight bits of `present` at a time. */
typedef int32_t Costs[COLUMNS][BYTES];

/* One of our readings. */
typedef struct {
    int64_t size, whole, syllables, kinds;
    int32_t weight[OURS];
    const uint8_t *difference[OURS];
    uint8_t nearest[BYTES];  /* how little a letter differs from the nearest of ours */
    Costs costs, absent;     /* for all sounds; for ours alone */
    int kind[OURS];          /* which of the distinct sounds each is */
    int32_t kind_weight[OURS];
    uint8_t nearest_there[OURS][COLUMNS][BYTES]; /* how little each of those differs from the nearest that a column has */
} Ours;

typedef struct {
    const Sounds *sounds;
    const Packed *packed;
    Ours *ours;
    Costs cheapest; /* for any of our readings */
    int64_t readings, room;
    /* the other code, its sounds' weights, and what each of them must cost in any case; room for an alignment */
    const uint8_t *code;
    int64_t size, whole, syllables;
    int32_t *weight, *aside, *row;
    int32_t ours_aside[OURS]; /* what each kind of sound of ours must cost, in hundredths of its weight */
} Search;

static void make_room(Search *search, int64_t sounds)
{
    if (sounds <= search->room)
        return;
    free(search->weight);
    search->room = 2 * sounds;
    search->weight = malloc((3 * (size_t)search->room + 1) * sizeof *search->weight);
    if (!search->weight)
        abort();
    search->aside = search->weight + search->room;
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

static int32_t lightest(const Sounds *sounds, uint8_t letter)
{
    return sounds->weight[letter] - (sounds->vowel[letter] ? 0 : (int32_t)sounds->clustered);
}

/* A sound that is there and not in ours is set against the nearest of ours; one of ours that is not there against the
   nearest that is, as far as its column tells: the sounds of the other columns may all be there. */
static void costs_of(const Sounds *sounds, const uint8_t *code, Ours *ours)
{
    memset(ours->costs, 0, sizeof ours->costs);
    memset(ours->absent, 0, sizeof ours->absent);
    memset(ours->nearest_there, 100, sizeof ours->nearest_there);
    for (int letter = 0; letter < BYTES; letter++) {
        int bit = sounds->bit[letter];
        if (!bit)
            continue;
        int32_t theirs = lightest(sounds, (uint8_t)letter) * ours->nearest[letter];
        for (int mask = 0; mask < BYTES; mask++)
            if (mask >> bit % 8 & 1)
                ours->costs[bit / 8][mask] += theirs;
    }
    int8_t seen[BYTES];
    memset(seen, -1, sizeof seen);
    ours->kinds = 0;
    for (int64_t at = 0; at < ours->size; at++) {
        if (seen[code[at]] < 0) {
            seen[code[at]] = (int8_t)ours->kinds;
            ours->kind_weight[ours->kinds++] = 0;
        }
        ours->kind[at] = seen[code[at]];
        ours->kind_weight[ours->kind[at]] += ours->weight[at];
    }
    for (int64_t at = 0; at < ours->size; at++) {
        int kind = ours->kind[at];
        uint8_t(*there)[BYTES] = ours->nearest_there[kind];
        int home = sounds->bit[code[at]] / 8;
        if (there[home][255] < 100)
            continue; /* done: the same sound stood before */
        int32_t elsewhere = 100;
        for (int other = 0; other < BYTES; other++) {
            int bit = sounds->bit[other], difference = sounds->difference[code[at] * BYTES + other];
            if (!bit)
                continue;
            if (bit / 8 != home && difference < elsewhere)
                elsewhere = difference;
            for (int mask = 0; mask < BYTES; mask++)
                if (mask >> bit % 8 & 1 && difference < there[bit / 8][mask])
                    there[bit / 8][mask] = (uint8_t)difference;
        }
        for (int mask = 0; mask < BYTES; mask++) {
            int32_t nearest = there[home][mask] < elsewhere ? there[home][mask] : elsewhere;
            ours->absent[home][mask] += ours->kind_weight[kind] * nearest;
            ours->costs[home][mask] += ours->kind_weight[kind] * nearest;
        }
    }
}

static void ours_of(const Sounds *sounds, const uint8_t *code, int64_t size, Ours *ours)
{
    ours->size = size;
    ours->whole = weights_of(sounds, code, size, ours->weight);
    ours->syllables = syllables_in(sounds, code, size);
    memset(ours->nearest, 100, sizeof ours->nearest);
    for (int64_t at = 0; at < size; at++) {
        const uint8_t *difference = ours->difference[at] = sounds->difference + code[at] * BYTES;
        for (int other = 0; other < BYTES; other++)
            if (difference[other] < ours->nearest[other])
                ours->nearest[other] = difference[other];
    }
    costs_of(sounds, code, ours);
}

/* `codes` are our readings, `readings` of them, each ended by a zero byte. */
static void begin(Search *search, const Sounds *sounds, const Packed *packed, const uint8_t *codes, int64_t readings)
{
    search->sounds = sounds;
    search->packed = packed;
    search->readings = readings;
    search->room = 0;
    search->weight = NULL;
    search->ours = malloc((size_t)readings * sizeof *search->ours);
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
    free(search->weight);
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
    search->whole = weights_of(search->sounds, search->code, search->size, search->weight);
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

/* What aligning one of our readings with the code turned to costs in any case, by the sounds that each has, in whatever
   order: each must be set against another, or against nothing. Fills in the shares of it; what is above `most` need not
   be told. */
INLINE int64_t least_cost(Search *search, const Ours *ours, const uint8_t *bytes, int64_t most)
{
    int64_t theirs = 0, mine = 0;
    for (int64_t at = 0; at < search->size; at++)
        theirs += search->aside[at] = search->weight[at] * ours->nearest[search->code[at]];
    if (theirs + cost_of(ours->absent, bytes) > most)
        return INT64_MAX;
    for (int64_t kind = 0; kind < ours->kinds; kind++) {
        int32_t nearest = 100;
        for (int column = 0; column < COLUMNS; column++) {
            int32_t here = ours->nearest_there[kind][column][bytes[column]];
            nearest = here < nearest ? here : nearest;
        }
        search->ours_aside[kind] = nearest;
        mine += ours->kind_weight[kind] * nearest;
    }
    return theirs + mine;
}

/* How alike one of our readings sounds to the code turned to; 0 where an alignment costs above `most`. */
INLINE double alike(Search *search, const Ours *ours, const uint8_t *bytes, int64_t most)
{
    int64_t least = least_cost(search, ours, bytes, most);
    if (least > most)
        return 0;
    int32_t more = spent(search, ours, most - least < NEVER ? (int32_t)(most - least) : NEVER - 1);
    return more == NEVER ? 0 : share(search, ours, least + more, search->whole, search->syllables);
}

/* How alike the closest of our readings sounds to each of some codes: sounds.Codes.alike. */
void sounds_alike(const Sounds *sounds, const Packed *packed, const uint8_t *codes, int64_t readings,
                  const int64_t *places, int64_t count, double *values)
{
    Search search;
    uint8_t bytes[COLUMNS];
    begin(&search, sounds, packed, codes, readings);
    for (int64_t at = 0; at < count; at++) {
        double best = 0;
        turn_to(&search, places[at]);
        bytes_of(packed, places[at], bytes);
        for (int64_t reading = 0; reading < readings; reading++) {
            double value = alike(&search, &search.ours[reading], bytes, INT64_MAX - 1);
            best = value > best ? value : best;
        }
        values[at] = best;
    }
    end(&search);
}

/* Every code that sounds at least `least` alike to one of our readings, with how alike: sounds.Codes.near. Looks
   through `given` places, or, where that is NULL, all from `low` on; `count` of them. */
int64_t sounds_near(const Sounds *sounds, const Packed *packed, const uint8_t *codes, int64_t readings,
                    const int64_t *given, int64_t low, int64_t count, double least, int64_t *places, double *values)
{
    Search search;
    uint8_t bytes[COLUMNS];
    begin(&search, sounds, packed, codes, readings);
    int64_t found = 0, heaviest = 0;
    for (int64_t reading = 0; reading < readings; reading++)
        heaviest = search.ours[reading].whole > heaviest ? search.ours[reading].whole : heaviest;
    /* What an alignment may cost, in hundredths of the weight of both, by the syllables of the other code. */
    double *spare = malloc((size_t)readings * BYTES * sizeof *spare);
    if (!spare)
        abort();
    for (int64_t reading = 0; reading < readings; reading++)
        for (int64_t syllables = 0; syllables < BYTES; syllables++)
            spare[reading * BYTES + syllables] = 100 * (1 - least / rhythm_of(&search, &search.ours[reading], syllables));
    for (int64_t at = 0; at < count; at++) {
        int64_t place = given ? given[at] : low + at, whole = packed->whole[place];
        bytes_of(packed, place, bytes);
        if ((double)cost_of(search.cheapest, bytes) > 100 * (1 - least) * (double)(whole + heaviest) + 1e-6)
            continue;
        int turned = 0;
        double best = 0;
        for (int64_t reading = 0; reading < readings; reading++) {
            const Ours *ours = &search.ours[reading];
            double most = spare[reading * BYTES + packed->syllables[place]] * (double)(whole + ours->whole) + 1e-6;
            if ((double)cost_of(ours->costs, bytes) > most)
                continue;
            if (!turned)
                turn_to(&search, place);
            turned = 1;
            double value = alike(&search, ours, bytes, (int64_t)most);
            best = value > best ? value : best;
        }
        if (best >= least) {
            places[found] = place;
            values[found++] = best;
        }
    }
    free(spare);
    end(&search);
    return found;
}
