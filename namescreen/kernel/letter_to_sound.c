/* Letters to sound: the search of pronunciation/letter_to_sound.py, JointModel.readings, with equal results.

Every sum is taken in the same order and every tie falls the same way as there; that module says what is done and why.
A context is looked up in the table's text when it is first met. What follows it, and the places of the word read
last, are remembered until they have grown large. */

#include <math.h>
#include <stdbool.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

enum {
    CONTEXT = 18, /* characters of the longest context: a row states in one digit how many units of two are kept */
    SOUND = 8,    /* characters of the longest sound of a unit */
    OTHER = 27,   /* any character but the letters a to z, which are 1 to 26; 0 is the end of the word */
    LETTER_BITS = 5,
    NONE = -1,
};
enum { MOST_STEPS = 1 << 17, MOST_WRITTEN = 1 << 13 }; /* remembered before all are let go: some 20 megabytes */

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
};
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
static bool reserve(void *array, size_t *room, size_t wanted, size_t size)
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

static uint64_t mixed(uint64_t key)
{
    key *= UINT64_C(0x9E3779B97F4A7C15);
    return key ^ key >> 32;
}

static int compared(const char *one, size_t one_size, const char *other, size_t other_size)
{
    int order = memcmp(one, other, one_size < other_size ? one_size : other_size);
    return order ? order : (one_size > other_size) - (one_size < other_size);
}

/* The table's row for a context, by binary search over its sorted lines; NULL if there is none. */
static const char *row_of(const struct model *model, const char *name, size_t size, size_t *row_size)
{
    const char *low = model->table, *high = model->table + model->table_size;
    while (low < high) {
        const char *line = low + (high - low) / 2;
        while (line > low && line[-1] != '\n')
            line--;
        const char *end = memchr(line, '\n', (size_t)(high - line));
        if (!end)
            end = high;
        const char *tab = memchr(line, '\t', (size_t)(end - line));
        int order = compared(line, (size_t)((tab ? tab : end) - line), name, size);
        if (order == 0 && tab) {
            *row_size = (size_t)(end - tab - 1);
            return tab + 1;
        }
        if (order < 0)
            low = end < high ? end + 1 : high;
        else
            high = line;
    }
    return NULL;
}

static size_t context_slot(const struct model *model, const char *name, size_t size)
{
    uint64_t key = size;
    for (size_t at = 0; at < size; at++)
        key = (key ^ (unsigned char)name[at]) * UINT64_C(0x100000001B3);
    size_t mask = model->context_slot_count - 1, slot = mixed(key) & mask;
    for (uint32_t at; (at = model->context_slots[slot]); slot = (slot + 1) & mask) {
        const struct context *met = &model->contexts[at - 1];
        if (met->size == size && !memcmp(met->name, name, size))
            break;
    }
    return slot;
}

/* The number of a context; NONE if there is no memory. */
static int32_t context_named(struct model *model, const char *name, size_t size)
{
    if (model->context_slot_count) {
        uint32_t met = model->context_slots[context_slot(model, name, size)];
        if (met)
            return (int32_t)(met - 1);
    }
    if (model->context_count > INT32_MAX / 2 ||
        !reserve(&model->contexts, &model->context_room, model->context_count + 1, sizeof *model->contexts))
        return NONE;
    if (2 * (model->context_count + 1) > model->context_slot_count) {
        size_t more = model->context_slot_count ? 2 * model->context_slot_count : 1024;
        uint32_t *slots = calloc(more, sizeof *slots);
        if (!slots)
            return NONE;
        free(model->context_slots);
        model->context_slots = slots;
        model->context_slot_count = more;
        for (size_t at = 0; at < model->context_count; at++) {
            const struct context *met = &model->contexts[at];
            slots[context_slot(model, met->name, met->size)] = (uint32_t)at + 1;
        }
    }
    struct context *made = &model->contexts[model->context_count];
    memset(made, 0, sizeof *made);
    memcpy(made->name, name, size);
    made->size = (uint8_t)size;
    made->shorter = NONE;
    made->row = row_of(model, name, size, &made->row_size);
    if (made->row && (made->row_size == 0 || made->row[0] & 128 || model->set.cost[(int)made->row[0]] < 0))
        made->row = NULL;
    model->context_slots[context_slot(model, name, size)] = (uint32_t)++model->context_count;
    return (int32_t)model->context_count - 1;
}

static size_t step_slot(const struct model *model, uint64_t key)
{
    size_t mask = model->step_slot_count - 1, slot = mixed(key) & mask;
    while (model->steps[slot].key && model->steps[slot].key != key)
        slot = (slot + 1) & mask;
    return slot;
}

static bool room_for_a_step(struct model *model)
{
    if (2 * (model->step_count + 1) <= model->step_slot_count)
        return true;
    size_t old_count = model->step_slot_count, more = old_count ? 2 * old_count : 4096;
    struct known_step *old = model->steps, *steps = calloc(more, sizeof *steps);
    if (!steps)
        return false;
    model->steps = steps;
    model->step_slot_count = more;
    for (size_t at = 0; at < old_count; at++)
        if (old[at].key)
            steps[step_slot(model, old[at].key)] = old[at];
    free(old);
    return true;
}

/* Whether one arc stands before another: by cost, next context, letters, phones, name. */
static bool before(const struct model *model, const struct arc *one, const struct arc *other)
{
    if (one->cost != other->cost)
        return one->cost < other->cost;
    const struct context *next = &model->contexts[one->next], *others = &model->contexts[other->next];
    const struct unit *unit = &model->units[one->unit], *another = &model->units[other->unit];
    int order = compared(next->name, next->size, others->name, others->size);
    if (!order)
        order = compared(unit->letters, unit->letters_size, another->letters, another->letters_size);
    if (!order)
        order = compared(unit->sound, unit->sound_size, another->sound, another->sound_size);
    if (!order)
        order = memcmp(unit->name, another->name, 2);
    return order < 0;
}

static void put_in_order(const struct model *model, size_t count, struct arc arc)
{
    struct arc *found = model->found;
    while (count && before(model, &arc, &found[count - 1])) {
        found[count] = found[count - 1];
        count--;
    }
    found[count] = arc;
}

static int letter(char character) { return character >= 'a' && character <= 'z' ? character - 'a' + 1 : OTHER; }

/* Whether a unit's letters are the first or both of the two that come next; the end's unit has none. */
static bool wanted(const struct unit *unit, int first, int second)
{
    if (!unit->letters_size || !first)
        return !unit->letters_size && !first;
    return letter(unit->letters[0]) == first && (unit->letters_size == 1 || letter(unit->letters[1]) == second);
}

/* The units that may follow a context where these letters come next, cheapest first; false without memory.
It calls itself once for each unit of the context, at most nine deep. */
static bool reading_on(struct model *model, uint32_t context, int first, int second, struct step *step)
{
    uint64_t key = ((uint64_t)context << 2 * LETTER_BITS | (unsigned)first << LETTER_BITS | (unsigned)second) + 1;
    if (model->step_slot_count) {
        const struct known_step *known = &model->steps[step_slot(model, key)];
        if (known->key) {
            *step = known->step;
            return true;
        }
    }
    struct step shorter = {0.0, 0, 0};
    size_t size = model->contexts[context].size;
    if (size) {
        char name[CONTEXT];
        memcpy(name, model->contexts[context].name, size);
        int32_t next = model->contexts[context].shorter;
        if (next == NONE && (next = context_named(model, name + 2, size - 2)) == NONE)
            return false;
        model->contexts[context].shorter = next;
        if (!reading_on(model, (uint32_t)next, first, second, &shorter))
            return false;
    }
    const char *row = model->contexts[context].row;
    size_t row_size = row ? model->contexts[context].row_size : 0, count = 0;
    if (row)
        shorter.spent += model->set.cost[(int)row[0]];
    if (!reserve(&model->found, &model->found_room, row_size / 4 + shorter.count + 1, sizeof *model->found))
        return false;
    if (!++model->seen_stamp) {
        memset(model->seen, 0, model->unit_count * sizeof *model->seen);
        model->seen_stamp = 1;
    }
    for (size_t at = 1; at + 4 <= row_size; at += 4) {
        const char *entry = row + at;
        if ((entry[0] | entry[1] | entry[2]) & 128 || entry[3] < '0' || entry[3] > '9')
            continue;
        int unit = model->unit_named[entry[0] << 7 | entry[1]];
        double cost = model->set.cost[(int)entry[2]];
        if (unit < 0 || cost < 0 || !wanted(&model->units[unit], first, second))
            continue;
        char name[CONTEXT + 2];
        memcpy(name, model->contexts[context].name, size);
        memcpy(name + size, entry, 2);
        size_t kept = 2 * (size_t)(entry[3] - '0');
        if (kept > size + 2)
            kept = size + 2;
        int32_t next = context_named(model, name + size + 2 - kept, kept);
        if (next == NONE)
            return false;
        model->seen[unit] = model->seen_stamp;
        put_in_order(model, count++, (struct arc){cost, (uint32_t)next, (uint32_t)unit});
    }
    if (!count)
        *step = shorter;
    else {
        double worst = model->found[0].cost + model->set.choices_within;
        for (size_t at = 0; at < shorter.count; at++) {
            struct arc arc = model->arcs[shorter.first + at];
            arc.cost += shorter.spent;
            if (arc.cost > worst)
                break;
            if (model->seen[arc.unit] != model->seen_stamp)
                put_in_order(model, count++, arc);
        }
        if (count > (size_t)model->set.choices)
            count = (size_t)model->set.choices;
        if (model->arc_count + count > UINT32_MAX ||
            !reserve(&model->arcs, &model->arc_room, model->arc_count + count, sizeof *model->arcs))
            return false;
        memcpy(model->arcs + model->arc_count, model->found, count * sizeof *model->arcs);
        *step = (struct step){0.0, (uint32_t)model->arc_count, (uint32_t)count};
        model->arc_count += count;
    }
    if (!room_for_a_step(model))
        return false;
    model->steps[step_slot(model, key)] = (struct known_step){key, *step};
    model->step_count++;
    return true;
}

static size_t written_slot(const struct model *model, uint32_t before, char last)
{
    size_t mask = model->written_slot_count - 1;
    size_t slot = mixed((uint64_t)before << 8 | (unsigned char)last) & mask;
    for (uint32_t at; (at = model->written_slots[slot]); slot = (slot + 1) & mask)
        if (model->written[at].before == before && model->written[at].last == last)
            break;
    return slot;
}

/* What is written once `last` is added; 0, which is nothing written, if there is no memory. */
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
    for (size_t at = place.begun; at < place.end; at++)
        if (!put(&model->one, model->items[at]))
            return false;
    for (size_t at = place.kept; at < place.begun; at++) {
        struct hypothesis item = model->items[at];
        const struct written so_far = model->written[item.written];
        char last = so_far.last && !model->set.vowel[(int)so_far.last] ? so_far.last : 0;
        struct step step;
        if (!reading_on(model, item.context, first, second, &step))
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
    int32_t start = context_named(model, model->set.start, 2);
    return start != NONE && put(&model->one, (struct hypothesis){0.0, (uint32_t)start, 0}) &&
           add_place(model, INFINITY, INFINITY);
}

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
        if (!reading_on(model, item.context, 0, 0, &step))
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

/* Those readings as `_merged` gives them: how many, with their texts in `answer`, a line each; or NONE. */
static long merge(struct model *model, size_t found, size_t text_size)
{
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

/* The readings of a word, most probable first: how many; a line of `text` each, and its share. They stand until the
next call. Below 0, there was no memory. */
long letter_to_sound_readings(
    struct model *model, const char *word, size_t size, size_t beam, double within, const char **text,
    const double **shares)
{
    bool done = begin(model, word, size, beam, within);
    for (size_t at = model->place_count - 1; done && at < size; at++)
        done = read_letter(model, model->word[at], at + 1 < size ? model->word[at + 1] : 0);
    size_t text_size = 0;
    long count = done ? ended(model, &text_size) : NONE;
    if (count >= 0)
        count = merge(model, (size_t)count, text_size);
    if (count < 0)
        model->place_count = model->word_size = 0;
    *text = model->answer;
    *shares = model->shares;
    return count;
}

void letter_to_sound_close(struct model *model)
{
    if (!model)
        return;
    void *owned[] = {
        model->units, model->seen, model->contexts, model->context_slots, model->steps, model->arcs, model->found,
        model->written, model->written_slots, model->one.items, model->one.slots, model->two.items, model->two.slots,
        model->items, model->best, model->places, model->word, model->readings, model->merged, model->text,
        model->answer, model->shares, model,
    };
    for (size_t at = 0; at < sizeof owned / sizeof *owned; at++)
        free(owned[at]);
}

/* A model over a table's lines, which must outlive it, and over units: a line each of two characters of name, then the
letters, a tab and the phones. NULL if there is no memory or the units are of another kind. */
struct model *letter_to_sound_open(
    const char *table, size_t table_size, const char *units, size_t units_size, const struct settings *settings)
{
    struct model *model = calloc(1, sizeof *model);
    if (!model)
        return NULL;
    model->set = *settings;
    model->table = table;
    model->table_size = table_size;
    memset(model->unit_named, 255, sizeof model->unit_named);
    size_t lines = 0, room = 0;
    for (size_t at = 0; at < units_size; at++)
        lines += units[at] == '\n';
    if (lines > INT16_MAX || !reserve(&model->units, &room, lines + 1, sizeof *model->units) ||
        !(model->seen = calloc(lines + 1, sizeof *model->seen)))
        goto refused;
    for (const char *line = units, *end; model->unit_count < lines; line = end + 1) {
        end = memchr(line, '\n', (size_t)(units + units_size - line));
        const char *tab = memchr(line, '\t', (size_t)(end - line));
        if (!tab || tab - line < 2 || tab - line > 4 || end - tab - 1 > SOUND || (line[0] | line[1]) & 128)
            goto refused;
        struct unit *unit = &model->units[model->unit_count];
        memset(unit, 0, sizeof *unit);
        memcpy(unit->name, line, 2);
        unit->letters_size = (uint8_t)(tab - line - 2);
        memcpy(unit->letters, line + 2, unit->letters_size);
        unit->sound_size = (uint8_t)(end - tab - 1);
        memcpy(unit->sound, tab + 1, unit->sound_size);
        unit->stressed = memchr(unit->sound, '1', unit->sound_size) != NULL;
        for (size_t at = 0; at < unit->letters_size; at++)
            if (letter(unit->letters[at]) == OTHER)
                goto refused;
        for (size_t at = 0; at < unit->sound_size; at++)
            if (unit->sound[at] & 128 || unit->sound[at] == 0 || unit->sound[at] == '\n')
                goto refused;
        model->unit_named[line[0] << 7 | line[1]] = (int16_t)model->unit_count++;
    }
    return model;
refused:
    letter_to_sound_close(model);
    return NULL;
}
