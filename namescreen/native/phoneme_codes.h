/* What phoneme_codes.c and phoneme_sieve.c know of sounds, of a register's codes and of our readings. */

#ifndef NAMESCREEN_SOUNDS_H
#define NAMESCREEN_SOUNDS_H

#include <stdint.h>

#include "kernel.h"

enum { BYTES = 256, OURS = 64, COLUMNS = 6, GROUP = 16, NIBBLES = 2 * COLUMNS };

/* The same as _Sounds in namescreen/native/phonemes.py: what holds of every code. */
typedef struct {
    const uint8_t *difference; /* of two letters, in hundredths: BYTES rows of BYTES */
    const uint8_t *weight;     /* of a letter, in quarters of a full phone */
    const uint8_t *vowel;      /* 1 for a vowel */
    const uint8_t *letter;     /* for each bit of `present` its letter, 0 for none; 8 * COLUMNS of them */
    int64_t first, clustered;  /* added to the first sound; taken from one that is easily lost */
    double rhythm;
} Sounds;

/* The same as _Packed in namescreen/native/phoneme_codes.py. */
typedef struct {
    const uint8_t *blob, *weights;
    const uint32_t *start;
    const uint16_t *whole, *present; /* `present` in three columns of `count` */
    const uint8_t *syllables, *first; /* the first sound of each */
    int64_t count;
} Packed;

/* So many differences, all at most a hundred, dealt with in one step. */
typedef int8_t Together __attribute__((vector_size(GROUP)));

/* What the sounds that a code has and lacks cost at least, eight bits of `present` at a time. */
typedef int32_t Costs[COLUMNS][BYTES];

/* One of our readings. */
typedef struct {
    const uint8_t *code;
    int64_t size, whole, syllables, kinds;
    int32_t weight[OURS];
    const uint8_t *difference[OURS];
    uint8_t nearest[BYTES];  /* how little a letter differs from the nearest of ours */
    Costs costs;
    double spare[BYTES];     /* what an alignment may cost, for each hundredth of the weight of both, by syllables */
    uint8_t sieve[NIBBLES][GROUP]; /* as `costs`, four bits of `present` at a time, in units of `unit` */
    uint8_t first[4 * GROUP]; /* what the first sound's greater weight costs, for the letters 64 to 127 */
    int64_t unit;
    int kind[OURS];          /* which of the distinct sounds each is */
    const uint8_t *of_kind[OURS]; /* `difference` of each of those */
    int32_t kind_weight[OURS];
    /* How little each of those differs from the nearest that a column has, GROUP of them side by side. */
    Together nearest_there[OURS / GROUP][COLUMNS][BYTES];
} Ours;

/* What an alignment may cost for one of our readings to be as alike as `spare` was made for. */
INLINE int64_t may_cost(const Packed *packed, const Ours *ours, int64_t place)
{
    return (int64_t)(ours->spare[packed->syllables[place]] * (double)(packed->whole[place] + ours->whole) + 1e-6);
}

INLINE int32_t lightest(const Sounds *sounds, uint8_t letter)
{
    return sounds->weight[letter] - (sounds->vowel[letter] ? 0 : (int32_t)sounds->clustered);
}

/* phoneme_sieve.c: many codes in one step, on processors that can; the others take the slower way in phoneme_codes.c. Whoever
   asks for the sieve first makes it ready, for codes up to the place `last`. */
enum { ABREAST = 32 };
HIDDEN int sounds_abreast(void);
HIDDEN void sounds_sieve_ready(const Sounds *sounds, const Packed *packed, Ours *ours, int64_t last);
HIDDEN int64_t sounds_sieve(const Packed *packed, const Ours *ours, int64_t low, int64_t count, int64_t *places);
HIDDEN void sounds_aligned(const Packed *packed, const Ours *ours, const int64_t *places, int64_t count, int32_t *costs);

#endif
