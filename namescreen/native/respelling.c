/* Words written otherwise, one change at a time, as goods/respelt.py has it. Lists of texts are lines. */

#include <stdlib.h>
#include <string.h>

#include "kernel.h"

typedef struct {
    const char *start;
    int64_t size;
} Text;

/* Texts, each once, by open addressing: at most half of the places are taken. */
typedef struct {
    Text *places;
    uint64_t mask;
    int64_t count;
} Set;

/* Take up a text; 0 if it is there already. */
static int is_new(Set *set, Text text)
{
    uint64_t hash = 14695981039346656037u; /* FNV-1a */
    for (int64_t at = 0; at < text.size; at++)
        hash = (hash ^ (unsigned char)text.start[at]) * 1099511628211u;
    uint64_t place = hash & set->mask;
    for (; set->places[place].start; place = (place + 1) & set->mask)
        if (set->places[place].size == text.size && !memcmp(set->places[place].start, text.start, (size_t)text.size))
            return 0;
    set->places[place] = text;
    set->count++;
    return 1;
}

/* The next text of a list, up to the `stop` that ends each. Returns where the one after it begins; NULL at the end. */
static const char *next_text(const char *at, const char *end, char stop, Text *text)
{
    const char *last = at < end ? memchr(at, stop, (size_t)(end - at)) : NULL;
    *text = (Text){at, last ? last - at : 0};
    return last ? last + 1 : NULL;
}

static int64_t lines_in(const char *list, int64_t size)
{
    int64_t count = 0;
    for (int64_t at = 0; at < size; at++)
        count += list[at] == '\n';
    return count;
}

/* What is written so far of the next layer. */
typedef struct {
    char *list;
    int64_t size, room, most;
} Layer;

/* Write down the new forms of a word where `written` stands in it, once in each of the ways to write it in `full`. */
static int64_t change(Text word, Text written, Text full, Set *seen, Layer *found)
{
    for (int64_t at = 0; at + written.size <= word.size; at++) {
        if (memcmp(word.start + at, written.start, (size_t)written.size))
            continue;
        Text way;
        for (const char *next = full.start, *end = full.start + full.size;
             seen->count < found->most && (next = next_text(next, end, ' ', &way));) {
            int64_t rest = word.size - at - written.size, size = at + way.size + rest;
            char *form = found->list + found->size;
            if (found->size + size + 1 > found->room)
                return OUT_OF_BOUNDS;
            memcpy(form, word.start, (size_t)at);
            memcpy(form + at, way.start, (size_t)way.size);
            memcpy(form + at + way.size, word.start + word.size - rest, (size_t)rest);
            form[size] = '\n';
            if (is_new(seen, (Text){form, size}))
                found->size += size + 1;
        }
    }
    return 0;
}

/* Write down the forms, one change from those of `layer`, that are not among the `seen`, until `most` are. A line of
   `ways` is what is written, a tab, and what it may stand for, each with a space after it. Returns the size of what was
   written to `list`, which has `room`, or an error. */
int64_t respelling_layer(const char *ways, int64_t ways_size, const char *layer, int64_t layer_size, const char *seen,
                         int64_t seen_size, int64_t most, char *list, int64_t room)
{
    int64_t before = lines_in(seen, seen_size), places = 4, result = 0;
    while (places < 2 * ((before > most ? before : most) + 1))
        places *= 2;
    Set all = {calloc((size_t)places, sizeof(Text)), (uint64_t)places - 1, 0};
    if (!all.places)
        return NO_MEMORY;
    Text word, line, written;
    for (const char *next = seen; (next = next_text(next, seen + seen_size, '\n', &word));)
        is_new(&all, word);
    Layer found = {list, 0, room, most};
    for (const char *next = layer; !result && all.count < most && (next = next_text(next, layer + layer_size, '\n', &word));)
        for (const char *way = ways; !result && (way = next_text(way, ways + ways_size, '\n', &line));) {
            const char *full = next_text(line.start, line.start + line.size, '\t', &written);
            if (full && written.size)
                result = change(word, written, (Text){full, line.start + line.size - full}, &all, &found);
        }
    free(all.places);
    return result ? result : found.size;
}
