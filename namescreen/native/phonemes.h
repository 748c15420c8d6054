/* Phoneme codes, one letter a phoneme: declarations shared by phoneme_alignment.c and phoneme_search.c. */

#ifndef NAMESCREEN_PHONEMES_H
#define NAMESCREEN_PHONEMES_H

#include <stdlib.h>

#include "kernel.h"

enum { BYTES = 256, LONGEST_QUERY = 64, LONGEST_CODE = 65535, NEVER = 1 << 30 };

/* _Table in phonemes.py: the facts on every phoneme. */
typedef struct {
    const uint8_t *difference; /* of two letters, in hundredths: BYTES rows of BYTES */
    const uint8_t *weight;     /* of a letter, in quarters of a full phone */
    const uint8_t *vowel;      /* 1 for a vowel */
    int64_t first, clustered;  /* added to the first phoneme; taken from one that is easily lost */
    double rhythm;             /* the share lost for a missing syllable */
} PhonemeTable;

/* One reading of the name that is searched for. */
typedef struct {
    const uint8_t *code;
    int64_t size, whole, syllables; /* `whole` is the sum of its weights */
    int32_t weight[LONGEST_QUERY];
    const uint8_t *difference[LONGEST_QUERY]; /* the row of each phoneme in the table */
} Reading;

/* The other code of an alignment; `row` has room for size + 1 numbers. */
typedef struct {
    const uint8_t *code, *weight;
    int64_t size, whole, syllables;
    int32_t *row;
} Other;

HIDDEN int64_t phoneme_weights(const PhonemeTable *table, const uint8_t *code, int64_t size, int32_t *weight);
HIDDEN int64_t phoneme_syllables(const PhonemeTable *table, const uint8_t *code, int64_t size);
HIDDEN void phoneme_reading(const PhonemeTable *table, const uint8_t *code, int64_t size, Reading *reading);
HIDDEN int32_t phoneme_alignment_cost(const Reading *reading, const Other *other, int32_t most);

/* pronunciation.alignment.rhythm_factor. */
INLINE double rhythm_factor(const PhonemeTable *table, int64_t one, int64_t other)
{
    int64_t more = one > other ? one : other;
    return 1.0 - table->rhythm * (double)llabs(one - other) / (double)(more ? more : 1);
}

/* The similarity that an alignment of this cost gives; the steps of alignment_batch._similarity. */
INLINE double similarity_at(const PhonemeTable *table, const Reading *reading, int64_t cost, int64_t whole,
                            int64_t syllables)
{
    whole = 100 * (whole + reading->whole);
    return (whole ? 1.0 - (double)cost / (double)whole : 1.0) * rhythm_factor(table, syllables, reading->syllables);
}

#endif
