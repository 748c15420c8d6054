/* Grapheme-to-phoneme: the readings a search has found, added up and put in order. */

#include "g2p.h"

#include <math.h>

static int by_share(const void *one, const void *other)
{
    const struct reading *first = one, *second = other;
    if (first->share != second->share)
        return first->share > second->share ? -1 : 1;
    return compared(first->from, first->text_size, second->from, second->text_size);
}

/* A reading with primary stress, as `_with_primary` puts it, at `to`; its size, at most one more than before. */
static size_t with_primary(const struct settings *set, const char *from, size_t size, char *to)
{
    memcpy(to, from, size);
    if (memchr(from, '1', size))
        return size;
    char *second = memchr(to, '2', size);
    if (second) {
        *second = '1';
        return size;
    }
    size_t first = size, full = size;
    for (size_t at = size; at-- > 0;)
        if (set->vowel[(int)from[at]]) {
            first = at;
            if (from[at] != set->schwa)
                full = at;
        }
    if (first == size)
        return size;
    size_t at = full < size ? full : first;
    if (to[at] == set->schwa)
        to[at] = set->strut;
    memcpy(to + at + 2, from + at + 1, size - at - 1);
    to[at + 1] = '1';
    return size + 1;
}

/* Whether two readings are the same but for stress. */
static bool alike(const char *one, size_t one_size, const char *other, size_t other_size)
{
    const char *one_end = one + one_size, *other_end = other + other_size;
    for (;; one++, other++) {
        while (one < one_end && (*one == '1' || *one == '2'))
            one++;
        while (other < other_end && (*other == '1' || *other == '2'))
            other++;
        if (one == one_end || other == other_end)
            return one == one_end && other == other_end;
        if (*one != *other)
            return false;
    }
}

/* The readings that end at the last place, each once, with the sum of its probabilities; how many, or NONE. */
static long ended(struct model *model, size_t *text_size)
{
    struct place place = model->places[model->place_count - 1];
    size_t count = 0, most = place.begun - place.kept;
    if (!reserve(&model->best, &model->best_room, most + 1, sizeof *model->best) ||
        !reserve(&model->readings, &model->reading_room, most + 1, sizeof *model->readings) ||
        !reserve(&model->merged, &model->merged_room, most + 1, sizeof *model->merged))
        return NONE;
    double least = INFINITY;
    for (size_t at = place.kept; at < place.begun; at++) {
        struct hypothesis item = model->items[at];
        struct step step;
        if (!g2p_step(model, item.context, 0, 0, &step))
            return NONE;
        if (!step.count)
            continue;
        item.cost += step.spent + model->arcs[step.first].cost;
        item.cost += model->written[item.written].stressed ? 0.0 : model->set.unstressed;
        if (item.cost < least)
            least = item.cost;
        model->best[count++] = item;
    }
    size_t found = 0;
    *text_size = 0;
    for (size_t at = 0; at < count; at++) {
        struct hypothesis item = model->best[at];
        double share = exp(least - item.cost);
        size_t same = 0;
        while (same < found && model->best[same].written != item.written)
            same++;
        if (same < found) {
            model->readings[same].share += share;
            continue;
        }
        size_t size = 0;
        for (uint32_t back = item.written; back; back = model->written[back].before)
            size++;
        if (!reserve(&model->text, &model->text_room, *text_size + size + 1, 1))
            return NONE;
        char *to = model->text + *text_size + size;
        for (uint32_t back = item.written; back; back = model->written[back].before)
            *--to = model->written[back].last;
        model->best[found] = item;
        model->readings[found++] = (struct reading){share, *text_size, size, NULL};
        *text_size += size;
    }
    return (long)found;
}

long g2p_ranked(struct model *model)
{
    size_t text_size;
    long ends = ended(model, &text_size);
    if (ends < 0)
        return NONE;
    size_t found = (size_t)ends;
    double total = 0.0;
    for (size_t at = 0; at < found; at++) {
        model->readings[at].from = model->text + model->readings[at].text;
        total += model->readings[at].share;
    }
    if (found)
        qsort(model->readings, found, sizeof *model->readings, by_share);
    /* The stressed readings, and then the answer, which are at most a character and a line break longer each. */
    if (!reserve(&model->answer, &model->answer_room, 2 * (text_size + 2 * found + 1), 1) ||
        !reserve(&model->shares, &model->share_room, found + 1, sizeof *model->shares))
        return NONE;
    char *to = model->answer + text_size + 2 * found + 1;
    size_t count = 0;
    for (size_t at = 0; at < found; at++) {
        struct reading reading = model->readings[at];
        size_t size = with_primary(&model->set, reading.from, reading.text_size, to), same = 0;
        while (same < count && !alike(model->merged[same].from, model->merged[same].text_size, to, size))
            same++;
        if (same == count) {
            model->merged[count++] = (struct reading){0.0, 0, size, to};
            to += size;
        }
        model->merged[same].share += reading.share / total;
    }
    if (count)
        qsort(model->merged, count, sizeof *model->merged, by_share);
    to = model->answer;
    for (size_t at = 0; at < count; at++) {
        memcpy(to, model->merged[at].from, model->merged[at].text_size);
        to += model->merged[at].text_size;
        *to++ = '\n';
        model->shares[at] = model->merged[at].share;
    }
    *to = 0;
    return (long)count;
}
