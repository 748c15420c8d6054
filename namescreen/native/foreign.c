/* In which languages a word may be one, an inflected one, a compound or an English word in another spelling: what
   lexicon/translation.py would find out, for all languages at once and without looking anything up in full. The answer
   may have a language too many, never one too few: entries of tables are known by a number made of their keys. */

#include <stdbool.h>
#include <stdlib.h>
#include <string.h>

#include "foreign.h"

enum {
    CHANGED = 8,    /* letters that the end of an inflected form may change at most */
    STEMS = 64,
    ENDINGS = 1024, /* slots for endings, a power of two */
    LANGUAGES = 26, /* bits that say in which languages an entry stands */
};
#define EVERYTHING INT64_C(-1)

/* What a form may have come from: letters that its end consists of, and what stood there, where a number below 0 is a
   letter of the form, counted from -1 on. */
struct change {
    uint32_t languages, letters[CHANGED];
    int8_t made[16];
    uint8_t length, size;
};
struct ending { uint32_t languages; uint8_t size; char letters[11]; };
struct settings {
    char codes[LANGUAGES][2];
    uint32_t dutch, compounding, ending_count, small_count, changes_from[27];
    int32_t shortest, shortest_part, shortest_compound, shortest_cognate, longest_compound;
    char vowels[16];
};
struct keys { uint64_t *slots; size_t mask; }; /* the upper bits of a key's number, and its languages */
struct stem { char letters[LONGEST_FORM]; int size; uint32_t languages; };
struct index {
    struct settings set;
    uint32_t code[26 * 26];
    bool vowel[128];
    struct keys words, parts, international;
    uint32_t ending[ENDINGS], ending_languages[ENDINGS];
    int longest_ending;
    struct ending *small;
    struct change *changes;
};

static uint64_t number_of(const char *letters, size_t size)
{
    uint64_t number = size + 1;
    for (; size; letters += size < 8 ? size : 8, size -= size < 8 ? size : 8) {
        uint64_t eight = 0;
        memcpy(&eight, letters, size < 8 ? size : 8);
        number = (number ^ eight) * UINT64_C(0x9E3779B97F4A7C15);
        number ^= number >> 29;
    }
    number *= UINT64_C(0xBF58476D1CE4E5B9);
    return number ^ number >> 32;
}

#define TAG(number) ((number) >> LANGUAGES << LANGUAGES)

static uint64_t *slot_of(const struct keys *keys, uint64_t number)
{
    uint64_t tag = TAG(number) ? TAG(number) : TAG(UINT64_MAX);
    for (size_t at = (size_t)number & keys->mask;; at = (at + 1) & keys->mask)
        if (!keys->slots[at] || TAG(keys->slots[at]) == tag)
            return &keys->slots[at];
}

static void keep(struct keys *keys, const char *key, size_t size, uint32_t languages)
{
    uint64_t number = number_of(key, size), *slot = slot_of(keys, number);
    *slot |= (TAG(number) ? TAG(number) : TAG(UINT64_MAX)) | languages;
}

static uint32_t languages_with(const struct keys *keys, const char *key, int size)
{
    return (uint32_t)(*slot_of(keys, number_of(key, (size_t)size)) & ((UINT64_C(1) << LANGUAGES) - 1));
}

static uint32_t language(const struct index *index, const char *code, const char *end)
{
    if (end - code < 2 || code[0] < 'a' || code[0] > 'z' || code[1] < 'a' || code[1] > 'z')
        return 0;
    return index->code[26 * (code[0] - 'a') + code[1] - 'a'];
}

/* The keys of a table's lines, each with the languages whose codes begin its value, and follow on any `between` there;
   without `between` each counts as of the first language. False without memory. */
static bool read_keys(const struct index *index, struct keys *keys, const char *data, int64_t size, char between)
{
    size_t rows = 1, room = 64;
    const char *end = data + size;
    for (const char *at = data; (at = memchr(at, '\n', (size_t)(end - at))); at++)
        rows++;
    while (room < 2 * rows)
        room *= 2;
    if (!(keys->slots = calloc(room, sizeof *keys->slots)))
        return false;
    keys->mask = room - 1;
    for (const char *line = data, *next; line < end; line = next + 1) {
        if (!(next = memchr(line, '\n', (size_t)(end - line))))
            next = end;
        const char *tab = memchr(line, '\t', (size_t)(next - line));
        if (!tab)
            continue;
        uint32_t languages = between ? 0 : 1;
        for (const char *value = tab; between && value; value = memchr(value + 1, between, (size_t)(next - value - 1)))
            languages |= language(index, value + 1, next);
        if (languages)
            keep(keys, line, (size_t)(tab - line), languages);
    }
    return true;
}

static void add_stem(struct stem *stems, int *count, const char *letters, int size, uint32_t languages)
{
    for (int at = 0; at < *count; at++)
        if (stems[at].size == size && !memcmp(stems[at].letters, letters, (size_t)size)) {
            stems[at].languages |= languages;
            return;
        }
    if (*count == STEMS)
        return;
    struct stem *stem = &stems[(*count)++];
    memcpy(stem->letters, letters, (size_t)size);
    stem->size = size;
    stem->languages = languages;
}

/* Add what is left of a form when an ending is taken off, without doubled letters and final vowels. */
static void add_bare(
    const struct index *index, struct stem *stems, int *count, const char *form, int size, uint32_t languages)
{
    char bare[LONGEST_FORM];
    int length = foreign_undoubled(form, size, bare), least = length < index->set.shortest ? length : index->set.shortest;
    while (length > least && index->vowel[(int)bare[length - 1]])
        length--;
    add_stem(stems, count, bare, length, languages);
    if (languages & index->set.dutch && length && (bare[length - 1] == 'v' || bare[length - 1] == 'z')) {
        bare[length - 1] = bare[length - 1] == 'v' ? 'f' : 's';
        add_stem(stems, count, bare, length, index->set.dutch);
    }
}

static size_t slot_of_ending(const struct index *index, uint32_t ending)
{
    size_t slot = ending * UINT32_C(2654435761) >> 22;
    while (index->ending[slot] && index->ending[slot] != ending)
        slot = (slot + 1) & (ENDINGS - 1);
    return slot;
}

static void add_by_endings(
    const struct index *index, struct stem *stems, int *count, const char *form, int size, uint32_t languages)
{
    if (size < index->set.shortest) {
        add_stem(stems, count, form, size, languages);
        return;
    }
    add_bare(index, stems, count, form, size, languages);
    uint32_t ending = 0;
    for (int length = 1; length <= index->longest_ending && length <= size - index->set.shortest; length++) {
        ending = ending << 8 | (unsigned char)form[size - length];
        size_t slot = slot_of_ending(index, ending);
        uint32_t both = index->ending_languages[slot] & languages;
        if (index->ending[slot] && both)
            add_bare(index, stems, count, form, size - length, both);
    }
}

/* The stems of a word of letters a to z, each with the languages in which it may be one; `STEMS` where there are more
   than could be kept. */
static int stems_of(const struct index *index, const char *word, int size, uint32_t languages, struct stem *stems)
{
    int count = 0, last = size ? word[size - 1] - 'a' : 0;
    add_by_endings(index, stems, &count, word, size, languages);
    for (size_t at = index->set.changes_from[last]; at < index->set.changes_from[last + 1]; at++) {
        const struct change *change = &index->changes[at];
        int from = size - change->length, made = from;
        if (from < 0 || !(change->languages & languages))
            continue;
        bool met = true;
        for (int one = 0; met && one < change->length; one++)
            met = change->letters[one] >> (word[from + one] - 'a') & 1;
        if (!met)
            continue;
        char form[LONGEST_FORM];
        memcpy(form, word, (size_t)from);
        for (int one = 0; one < change->size; one++)
            form[made++] = change->made[one] < 0 ? word[from - change->made[one] - 1] : (char)change->made[one];
        if (made >= index->set.shortest)
            add_by_endings(index, stems, &count, form, made, change->languages & languages);
    }
    return count;
}

static bool is_international(const struct index *index, const struct stem *stem)
{
    char key[LONGEST_SKELETON];
    int size = foreign_skeleton(stem->letters, stem->size, key);
    return size >= index->set.shortest_cognate && languages_with(&index->international, key, size);
}

static uint32_t international(const struct index *index, const struct stem *stems, int count, uint32_t languages)
{
    uint32_t found = 0;
    for (int at = 0; at < count; at++)
        if (stems[at].languages & languages & ~found && is_international(index, &stems[at]))
            found |= stems[at].languages & languages;
    return found;
}

/* The languages among some in whose compounds a part may stand. */
static uint32_t as_part(const struct index *index, const char *part, int size, uint32_t languages)
{
    if (size < 2 || part[0] == part[1])
        return 0;
    struct stem stems[STEMS];
    int count = stems_of(index, part, size, languages, stems);
    if (count == STEMS)
        return languages;
    uint32_t found = 0;
    for (int at = 0; at < count; at++)
        found |= stems[at].languages & languages_with(&index->parts, stems[at].letters, stems[at].size);
    if (size > index->set.shortest_cognate)
        found |= international(index, stems, count, languages & ~found);
    return found & languages;
}

static uint32_t made_small(const struct index *index, const char *word, int size)
{
    uint32_t found = 0;
    for (size_t at = 0; at < index->set.small_count; at++)
        if (index->small[at].size <= size &&
            !memcmp(word + size - index->small[at].size, index->small[at].letters, index->small[at].size))
            found |= index->small[at].languages;
    return found;
}

/* The languages in which a word may be a compound of two parts or three. */
static uint32_t as_compound(const struct index *index, const char *word, int size)
{
    int shortest = index->set.shortest_part;
    uint32_t every = index->set.compounding, found = 0, rests[LONGEST];
    if (size < index->set.shortest_compound || size > index->set.longest_compound || shortest < 1)
        return 0;
    bool asked[LONGEST] = {false};
    uint32_t small = made_small(index, word, size) & every;
    for (int cut = shortest; cut <= size - shortest && found != every; cut++) {
        uint32_t first = as_part(index, word, cut, every & ~found);
        if (!first)
            continue;
        for (int last = cut; last <= size - shortest; last += last == cut ? shortest : 1) {
            if (last > cut && cut == shortest)
                break; /* so short a part does not stand before two others */
            if (!asked[last]) {
                asked[last] = true;
                rests[last] = as_part(index, word + last, size - last, every) | small;
            }
            uint32_t both = first & rests[last] & ~found;
            found |= both && last > cut ? as_part(index, word + cut, last - cut, both) : both;
        }
    }
    return found;
}

/* What a word may be: from bit 0 on the languages in which it may be a compound, 8 bits, then those in which it may be
   in the table, 26, then those in which it may be an English word in another spelling, 26, and whether it may be a
   diminutive. Everything, where it is too long or has other letters than a to z. */
int64_t foreign_may_be(const struct index *index, const char *word, int64_t length)
{
    if (length < 1 || length > LONGEST - 8)
        return EVERYTHING;
    for (int64_t at = 0; at < length; at++)
        if (word[at] < 'a' || word[at] > 'z')
            return EVERYTHING;
    int size = (int)length;
    uint32_t every = (UINT32_C(1) << LANGUAGES) - 1, listed = 0;
    struct stem stems[STEMS];
    int count = stems_of(index, word, size, every, stems);
    if (count == STEMS)
        return EVERYTHING;
    for (int at = 0; at < count; at++)
        listed |= stems[at].languages & languages_with(&index->words, stems[at].letters, stems[at].size);
    uint64_t respelled = international(index, stems, count, every);
    uint64_t found = as_compound(index, word, size) | (uint64_t)listed << 8 | respelled << (8 + LANGUAGES);
    return (int64_t)(found | (uint64_t)(made_small(index, word, size) != 0) << (8 + 2 * LANGUAGES));
}

void foreign_close(struct index *index)
{
    if (!index)
        return;
    free(index->words.slots);
    free(index->parts.slots);
    free(index->international.slots);
    free(index->small);
    free(index->changes);
    free(index);
}

/* An index over the lines of three tables: words, parts of compounds and international words. `changes` stand in order of
   the last letter, `settings` say from where on those of each. NULL if there is no memory or the settings are of another
   kind. */
struct index *foreign_open(
    const struct settings *settings, const char *const *tables, const int64_t *sizes, const struct ending *endings,
    const struct ending *small, const struct change *changes)
{
    struct index *index = calloc(1, sizeof *index);
    if (!index)
        return NULL;
    index->set = *settings;
    uint32_t change_count = settings->changes_from[26];
    if (settings->ending_count >= ENDINGS / 2 || !memchr(settings->vowels, 0, sizeof settings->vowels))
        goto refused;
    for (int at = 0; at < LANGUAGES; at++) {
        const char *code = settings->codes[at];
        if (code[0] < 'a' || code[0] > 'z' || code[1] < 'a' || code[1] > 'z')
            goto refused;
        index->code[26 * (code[0] - 'a') + code[1] - 'a'] = UINT32_C(1) << at;
    }
    for (const char *vowel = settings->vowels; *vowel; vowel++)
        index->vowel[*vowel & 127] = true;
    for (uint32_t at = 0; at < settings->ending_count; at++) {
        uint32_t ending = 0;
        if (endings[at].size > 4)
            goto refused;
        for (int letter = endings[at].size - 1; letter >= 0; letter--)
            ending = ending << 8 | (unsigned char)endings[at].letters[letter];
        size_t slot = slot_of_ending(index, ending);
        index->ending[slot] = ending;
        index->ending_languages[slot] |= endings[at].languages;
        if (endings[at].size > index->longest_ending)
            index->longest_ending = endings[at].size;
    }
    for (uint32_t at = 0; at < change_count; at++)
        if (changes[at].length > CHANGED || changes[at].size > sizeof changes[at].made)
            goto refused;
    if (!(index->small = malloc((settings->small_count + 1) * sizeof *small)) ||
        !(index->changes = malloc((change_count + 1) * sizeof *changes)))
        goto refused;
    memcpy(index->small, small, settings->small_count * sizeof *small);
    memcpy(index->changes, changes, change_count * sizeof *changes);
    if (read_keys(index, &index->words, tables[0], sizes[0], ';') &&
        read_keys(index, &index->parts, tables[1], sizes[1], ' ') &&
        read_keys(index, &index->international, tables[2], sizes[2], 0))
        return index;
refused:
    foreign_close(index);
    return NULL;
}
