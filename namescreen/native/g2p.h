/* Grapheme-to-phoneme: declarations shared by the files of the search. */

#ifndef LETTER_TO_SOUND_H
#define LETTER_TO_SOUND_H

#include <stdbool.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

enum {
    CONTEXT = 18, /* characters of the longest context: a row states in one digit how many units of two are kept */
    SOUND = 8,    /* characters of the longest sound of a unit */
    OTHER = 27,   /* any character but the letters a to z, which are 1 to 26; 0 is the end of the word */
    LENGTHS = CONTEXT / 2 + 1,
    KEPT = 4, /* characters of the longest context whose steps are kept: longer ones hardly come again */
    LETTER_BITS = 5,
    NONE = -1,
};
enum { MOST_STEPS = 1 << 17, MOST_WRITTEN = 1 << 13 }; /* kept before the cache is cleared: some 30 megabytes */

struct settings {
    double cost[128]; /* what a character of the table stands for; below 0, nothing */
    double unstressed, choices_within;
    int32_t choices;
    char start[2], schwa, strut;
    char vowel[128];
};

struct unit {
    char name[2], letters[2], sound[SOUND];
    uint8_t letters_size, sound_size;
    bool stressed;
};
struct context {
    char name[CONTEXT];
    uint8_t size;
    int32_t shorter; /* the context without its first unit, once it was asked for */
    const char *row; /* NULL where the table has none */
    size_t row_size;
    double backoff;
    uint32_t first_entry, entry_count; /* once it `is_read` */
    bool is_read;
};
/* A unit that may follow a context, and how many characters of both the next context keeps, whose number is known once
   it was asked for. */
struct entry { int32_t next; uint16_t unit; uint8_t kept; char cost; };
struct arc { double cost; uint32_t next; uint32_t unit; };
struct step { double spent; uint32_t first, count; };
struct known_step { uint64_t key; struct step step; };

/* What a hypothesis has written so far: the same characters are always the same place in the tree. */
struct written { uint32_t before; char last; bool stressed; };
struct hypothesis { double cost; uint32_t context, written; };
struct slot { uint32_t stamp, at; };
struct front { /* in order of first arrival, one for each context and writing */
    struct hypothesis *items;
    size_t count, room;
    struct slot *slots;
    size_t slot_count;
    uint32_t stamp;
};
struct place { size_t kept, begun, end; double limit; }; /* where in `items` the kept and the begun ones stand */
struct reading { double share; size_t text, text_size; const char *from; };

struct model {
    struct settings set;
    const char *table;
    size_t table_size;
    int16_t unit_named[128 * 128];
    struct unit *units;
    uint32_t *seen;
    size_t unit_count;
    uint32_t seen_stamp;

    struct context *contexts;
    size_t context_count, context_room;
    uint32_t *context_slots; /* a context's place and one more */
    size_t context_slot_count;
    struct entry *entries;
    size_t entry_count, entry_room;

    struct known_step *steps;
    size_t step_count, step_slot_count;
    struct arc *arcs, *found;
    size_t arc_count, arc_room, found_room;

    struct written *written;
    size_t written_count, written_room;
    uint32_t *written_slots;
    size_t written_slot_count;

    struct front one, two;
    struct hypothesis *items, *best;
    size_t item_room, best_room;
    struct place *places;
    size_t place_count, place_room;
    uint8_t *word; /* the word read last, and with what beam */
    size_t word_size, word_room;
    size_t beam;
    double within;

    struct reading *readings, *merged;
    size_t reading_room, merged_room;
    char *text, *answer;
    size_t text_room, answer_room;
    double *shares;
    size_t share_room;
};

/* Room for `wanted` items of `size` bytes; false if there is no memory. */
static inline bool reserve(void *array, size_t *room, size_t wanted, size_t size)
{
    if (wanted <= *room)
        return true;
    size_t more = *room ? *room : 64;
    while (more < wanted) {
        if (more > SIZE_MAX / 2 / size)
            return false;
        more *= 2;
    }
    void *old, *moved;
    memcpy(&old, array, sizeof old);
    if (!(moved = realloc(old, more * size)))
        return false;
    memcpy(array, &moved, sizeof moved);
    *room = more;
    return true;
}

static inline uint64_t mixed(uint64_t key)
{
    key *= UINT64_C(0x9E3779B97F4A7C15);
    return key ^ key >> 32;
}

static inline int compared(const char *one, size_t one_size, const char *other, size_t other_size)
{
    int order = memcmp(one, other, one_size < other_size ? one_size : other_size);
    return order ? order : (one_size > other_size) - (one_size < other_size);
}

static inline int letter(char character) { return character >= 'a' && character <= 'z' ? character - 'a' + 1 : OTHER; }

/* The number of a context; NONE if there is no memory. */
int32_t g2p_context(struct model *model, const char *name, size_t size);

/* The units that may follow a context where these letters come next, cheapest first; false without memory. */
bool g2p_step(struct model *model, uint32_t context, int first, int second, struct step *step);

/* That these steps will be asked for soon: most of the time of a step goes into waiting for memory. */
void g2p_expect(const struct model *model, const struct hypothesis *items, size_t count, int first, int second);

/* The readings that end at the last place, ranked: how many, with their texts in `answer`, a line each; or NONE. */
long g2p_ranked(struct model *model);

#endif
