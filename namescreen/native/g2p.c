/* Grapheme-to-phoneme: the search of pronunciation/g2p.py, JointModel.readings, with equal results.

Every sum is taken in the same order and every tie falls the same way as there; that module says what is done and why.
The places of the word read last are kept for the next word, and all is let go once it has grown large. */

#include "g2p.h"

#include <math.h>

static size_t written_slot(const struct model *model, uint32_t before, char last)
{
    size_t mask = model->written_slot_count - 1;
    size_t slot = mixed((uint64_t)before << 8 | (unsigned char)last) & mask;
    for (uint32_t at; (at = model->written_slots[slot]); slot = (slot + 1) & mask)
        if (model->written[at].before == before && model->written[at].last == last)
            break;
    return slot;
}

/* The writing with `last` added; 0, the empty writing, if there is no memory. */
static uint32_t written_on(struct model *model, uint32_t before, char last)
{
    if (2 * (model->written_count + 1) > model->written_slot_count) {
        size_t more = model->written_slot_count ? 2 * model->written_slot_count : 4096;
        uint32_t *slots = calloc(more, sizeof *slots);
        if (!slots)
            return 0;
        free(model->written_slots);
        model->written_slots = slots;
        model->written_slot_count = more;
        for (size_t at = 1; at < model->written_count; at++)
            slots[written_slot(model, model->written[at].before, model->written[at].last)] = (uint32_t)at;
    }
    size_t slot = written_slot(model, before, last);
    if (model->written_slots[slot])
        return model->written_slots[slot];
    if (model->written_count >= UINT32_MAX / 2 ||
        !reserve(&model->written, &model->written_room, model->written_count + 1, sizeof *model->written))
        return 0;
    model->written[model->written_count] =
        (struct written){before, last, model->written[before].stressed || last == '1'};
    model->written_slots[slot] = (uint32_t)model->written_count;
    return (uint32_t)model->written_count++;
}

static void clear_front(struct front *front)
{
    front->count = 0;
    if (!++front->stamp) {
        memset(front->slots, 0, front->slot_count * sizeof *front->slots);
        front->stamp = 1;
    }
}

static struct slot *front_slot(const struct front *front, uint32_t context, uint32_t written)
{
    size_t mask = front->slot_count - 1, slot = mixed((uint64_t)context << 32 | written) & mask;
    for (; front->slots[slot].stamp == front->stamp; slot = (slot + 1) & mask) {
        const struct hypothesis *met = &front->items[front->slots[slot].at];
        if (met->context == context && met->written == written)
            break;
    }
    return &front->slots[slot];
}

/* A hypothesis among the others, in place of a dearer one with the same context and writing; false without memory. */
static bool put(struct front *front, struct hypothesis new)
{
    if (2 * (front->count + 1) > front->slot_count) {
        size_t more = front->slot_count ? 2 * front->slot_count : 1024;
        struct slot *slots = calloc(more, sizeof *slots);
        if (!slots)
            return false;
        free(front->slots);
        front->slots = slots;
        front->slot_count = more;
        front->stamp = 1;
        for (size_t at = 0; at < front->count; at++)
            *front_slot(front, front->items[at].context, front->items[at].written) = (struct slot){1, (uint32_t)at};
    }
    struct slot *slot = front_slot(front, new.context, new.written);
    if (slot->stamp == front->stamp) {
        struct hypothesis *met = &front->items[slot->at];
        if (met->cost > new.cost)
            met->cost = new.cost;
        return true;
    }
    if (front->count >= UINT32_MAX / 2 ||
        !reserve(&front->items, &front->room, front->count + 1, sizeof *front->items))
        return false;
    *slot = (struct slot){front->stamp, (uint32_t)front->count};
    front->items[front->count++] = new;
    return true;
}

/* Take the best of `one` as those kept at the next place, and all of `two` as those begun beyond it. */
static bool add_place(struct model *model, double limit_one, double limit_two)
{
    size_t count = 0, start = model->place_count ? model->places[model->place_count - 1].end : 0;
    const struct front *one = &model->one, *two = &model->two;
    if (!reserve(&model->items, &model->item_room, start + one->count + two->count + 1, sizeof *model->items) ||
        !reserve(&model->places, &model->place_room, model->place_count + 1, sizeof *model->places))
        return false;
    struct hypothesis *kept = model->items + start;
    for (size_t at = 0; at < one->count; at++) {
        struct hypothesis item = one->items[at];
        if (item.cost > limit_one || (count == model->beam && item.cost >= kept[count - 1].cost))
            continue;
        size_t to = count < model->beam ? count++ : count - 1;
        for (; to && kept[to - 1].cost > item.cost; to--)
            kept[to] = kept[to - 1];
        kept[to] = item;
    }
    if (two->count)
        memcpy(kept + count, two->items, two->count * sizeof *kept);
    model->places[model->place_count++] =
        (struct place){start, start + count, start + count + two->count, limit_two};
    return true;
}

/* From the last place to the next: every hypothesis kept there goes on by one letter or two. */
static bool read_letter(struct model *model, int first, int second)
{
    struct place place = model->places[model->place_count - 1];
    double limit_one = place.limit, limit_two = INFINITY;
    clear_front(&model->one);
    clear_front(&model->two);
    g2p_expect(model, model->items + place.kept, place.begun - place.kept, first, second);
    for (size_t at = place.begun; at < place.end; at++)
        if (!put(&model->one, model->items[at]))
            return false;
    for (size_t at = place.kept; at < place.begun; at++) {
        struct hypothesis item = model->items[at];
        const struct written so_far = model->written[item.written];
        char last = so_far.last && !model->set.vowel[(int)so_far.last] ? so_far.last : 0;
        struct step step;
        if (!g2p_step(model, item.context, first, second, &step))
            return false;
        double spent = step.spent + item.cost;
        const struct arc *arcs = model->arcs + step.first;
        for (size_t choice = 0; choice < step.count; choice++) {
            const struct unit *unit = &model->units[arcs[choice].unit];
            if (so_far.stressed && unit->stressed)
                continue;
            double total = spent + arcs[choice].cost;
            bool single = unit->letters_size == 1;
            if (single && total > limit_one) {
                if (total > limit_two)
                    break; /* the arcs that follow cost no less */
                continue;
            }
            if (!single && total > limit_two)
                continue;
            double *limit = single ? &limit_one : &limit_two;
            if (total + model->within < *limit)
                *limit = total + model->within;
            uint32_t written = item.written;
            for (size_t sound = last && unit->sound_size && unit->sound[0] == last; sound < unit->sound_size; sound++)
                if (!(written = written_on(model, written, unit->sound[sound])))
                    return false;
            if (!put(single ? &model->one : &model->two, (struct hypothesis){total, arcs[choice].next, written}))
                return false;
        }
    }
    return add_place(model, limit_one, limit_two);
}

/* The places of the word read last that stand in this one as well; the first place stands in every word. */
static bool begin(struct model *model, const char *word, size_t size, size_t beam, double within)
{
    if (model->step_count > MOST_STEPS) {
        memset(model->steps, 0, model->step_slot_count * sizeof *model->steps);
        model->step_count = model->arc_count = 0;
    }
    size_t shared = 0;
    if (model->beam == beam && model->within == within && model->written_count <= MOST_WRITTEN)
        while (shared < size && shared < model->word_size && letter(word[shared]) == model->word[shared])
            shared++;
    if (shared < model->place_count)
        model->place_count = shared;
    model->word_size = 0;
    model->beam = beam;
    model->within = within;
    if (!reserve(&model->word, &model->word_room, size, 1))
        return false;
    for (size_t at = 0; at < size; at++)
        model->word[at] = (uint8_t)letter(word[at]);
    model->word_size = size;
    if (model->place_count)
        return true;
    if (model->written_room > 4 * MOST_WRITTEN) { /* one very long word does not hold on to its memory */
        free(model->written);
        free(model->written_slots);
        free(model->items);
        model->written = NULL;
        model->written_slots = NULL;
        model->items = NULL;
        model->written_room = model->written_slot_count = model->item_room = 0;
    } else if (model->written_slot_count)
        memset(model->written_slots, 0, model->written_slot_count * sizeof *model->written_slots);
    if (!reserve(&model->written, &model->written_room, 1, sizeof *model->written))
        return false;
    model->written[0] = (struct written){0, 0, false};
    model->written_count = 1;
    clear_front(&model->one);
    clear_front(&model->two);
    int32_t start = g2p_context(model, model->set.start, 2);
    return start != NONE && put(&model->one, (struct hypothesis){0.0, (uint32_t)start, 0}) &&
           add_place(model, INFINITY, INFINITY);
}

/* The readings of a word, most probable first: how many; a line of `text` each, and its share. They stand until the
next call. Below 0, there was no memory. */
long g2p_readings(
    struct model *model, const char *word, size_t size, size_t beam, double within, const char **text,
    const double **shares)
{
    bool done = begin(model, word, size, beam, within);
    for (size_t at = model->place_count - 1; done && at < size; at++)
        done = read_letter(model, model->word[at], at + 1 < size ? model->word[at + 1] : 0);
    long count = done ? g2p_ranked(model) : NONE;
    if (count < 0)
        model->place_count = model->word_size = 0;
    *text = model->answer;
    *shares = model->shares;
    return count;
}
