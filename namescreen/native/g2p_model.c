/* Grapheme-to-phoneme: the model. A context is looked up in the table's text when it is first met; what follows it is
worked out as `JointModel._reading_on` does, and remembered. */

#include "g2p.h"

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

/* As `g2p_context`, where the row of the context is known. */
static int32_t context_with(struct model *model, const char *name, size_t size, const char *row, size_t row_size)
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
    made->row = row;
    made->row_size = row_size;
    if (!row)
        made->row = row_of(model, name, size, &made->row_size);
    if (made->row && (made->row_size == 0 || made->row[0] & 128 || model->set.cost[(int)made->row[0]] < 0))
        made->row = NULL;
    model->context_slots[context_slot(model, name, size)] = (uint32_t)++model->context_count;
    return (int32_t)model->context_count - 1;
}

int32_t g2p_context(struct model *model, const char *name, size_t size)
{
    return context_with(model, name, size, NULL, 0);
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

/* Whether a unit's letters are the first or both of the two that come next; the end's unit has none. */
static bool wanted(const struct unit *unit, int first, int second)
{
    if (!unit->letters_size || !first)
        return !unit->letters_size && !first;
    return letter(unit->letters[0]) == first && (unit->letters_size == 1 || letter(unit->letters[1]) == second);
}

static uint64_t step_key(uint32_t context, int first, int second)
{
    return ((uint64_t)context << 2 * LETTER_BITS | (unsigned)first << LETTER_BITS | (unsigned)second) + 1;
}

void g2p_expect(const struct model *model, const struct hypothesis *items, size_t count, int first, int second)
{
#ifdef __GNUC__
    if (!model->step_slot_count)
        return;
    size_t mask = model->step_slot_count - 1;
    for (size_t at = 0; at < count; at++)
        __builtin_prefetch(&model->steps[mixed(step_key(items[at].context, first, second)) & mask]);
    for (int turn = 0; turn < 2; turn++)
        for (size_t at = 0; at < count; at++) {
            uint32_t context = items[at].context;
            uint64_t key = step_key(context, first, second);
            const struct known_step *known = &model->steps[mixed(key) & mask];
            if (known->key == key) {
                if (!turn)
                    __builtin_prefetch(&model->arcs[known->step.first]);
            } else if (!turn) {
                __builtin_prefetch(&model->contexts[context]);
            } else if (model->contexts[context].is_read) {
                const struct context *met = &model->contexts[context];
                __builtin_prefetch(&model->entries[met->first_entry]);
                if (met->shorter != NONE)
                    __builtin_prefetch(
                        &model->steps[mixed(step_key((uint32_t)met->shorter, first, second)) & mask]);
            }
        }
#endif
}

/* Read the units of a context's row, once; false without memory. */
static bool read_row(struct model *model, uint32_t context)
{
    struct context *read = &model->contexts[context];
    if (read->is_read)
        return true;
    const char *row = read->row;
    size_t row_size = row ? read->row_size : 0;
    if (model->entry_count + row_size / 4 > UINT32_MAX / 2 ||
        !reserve(&model->entries, &model->entry_room, model->entry_count + row_size / 4, sizeof *model->entries))
        return false;
    read->first_entry = (uint32_t)model->entry_count;
    read->backoff = row ? model->set.cost[(int)row[0]] : 0.0;
    for (size_t at = 1; at + 4 <= row_size; at += 4) {
        const char *entry = row + at;
        if ((entry[0] | entry[1] | entry[2]) & 128 || entry[3] < '0' || entry[3] > '9')
            continue;
        int unit = model->unit_named[entry[0] << 7 | entry[1]];
        if (unit >= 0 && model->set.cost[(int)entry[2]] >= 0)
            model->entries[model->entry_count++] =
                (struct entry){NONE, (uint16_t)unit, (uint8_t)(2 * (entry[3] - '0')), entry[2]};
    }
    read->entry_count = (uint32_t)(model->entry_count - read->first_entry);
    read->is_read = true;
    return true;
}

/* The context after a unit that follows another one; NONE if there is no memory. */
static int32_t following(struct model *model, uint32_t context, const struct entry *entry)
{
    char name[CONTEXT + 2];
    size_t size = model->contexts[context].size, kept = entry->kept;
    memcpy(name, model->contexts[context].name, size);
    memcpy(name + size, model->units[entry->unit].name, 2);
    if (kept > size + 2)
        kept = size + 2;
    return g2p_context(model, name + size + 2 - kept, kept);
}

/* A context without its first unit; NONE if there is no memory. */
static int32_t shortened(struct model *model, uint32_t context)
{
    int32_t next = model->contexts[context].shorter;
    if (next == NONE) {
        char name[CONTEXT];
        size_t size = model->contexts[context].size;
        memcpy(name, model->contexts[context].name, size);
        next = g2p_context(model, name + 2, size - 2);
        model->contexts[context].shorter = next;
    }
    return next;
}

/* Read the whole table; false without memory. */
bool g2p_preload(struct model *model)
{
    const char *end = model->table + model->table_size;
    for (const char *line = model->table, *next; line < end; line = next + 1) {
        if (!(next = memchr(line, '\n', (size_t)(end - line))))
            next = end;
        const char *tab = memchr(line, '\t', (size_t)(next - line));
        if (tab && tab - line <= CONTEXT &&
            context_with(model, line, (size_t)(tab - line), tab + 1, (size_t)(next - tab - 1)) == NONE)
            return false;
    }
    for (size_t at = 0; at < model->context_count; at++) {
        if (!read_row(model, (uint32_t)at) || (model->contexts[at].size && shortened(model, (uint32_t)at) == NONE))
            return false;
        for (size_t one = 0; one < model->contexts[at].entry_count; one++) {
            size_t place = model->contexts[at].first_entry + one;
            int32_t next = following(model, (uint32_t)at, &model->entries[place]);
            if (next == NONE)
                return false;
            model->entries[place].next = next;
        }
    }
    return true;
}

/* The step stands until the next call. It calls itself once for each unit of the context, at most nine deep. */
bool g2p_step(struct model *model, uint32_t context, int first, int second, struct step *step)
{
    uint64_t key = step_key(context, first, second);
    size_t size = model->contexts[context].size, most = (size_t)model->set.choices;
    bool kept = size <= KEPT;
    if (kept && model->step_slot_count) {
        const struct known_step *known = &model->steps[step_slot(model, key)];
        if (known->key) {
            *step = known->step;
            return true;
        }
    }
    struct step shorter = {0.0, 0, 0};
    if (size) {
        int32_t next = shortened(model, context);
        if (next == NONE || !g2p_step(model, (uint32_t)next, first, second, &shorter))
            return false;
    }
    if (!read_row(model, context))
        return false;
    size_t entry_count = model->contexts[context].entry_count, count = 0;
    shorter.spent += model->contexts[context].backoff;
    if (!reserve(&model->found, &model->found_room, entry_count + shorter.count + 1, sizeof *model->found))
        return false;
    if (!++model->seen_stamp) {
        memset(model->seen, 0, model->unit_count * sizeof *model->seen);
        model->seen_stamp = 1;
    }
    for (size_t at = 0; at < entry_count; at++) {
        struct entry *entry = &model->entries[model->contexts[context].first_entry + at];
        if (!wanted(&model->units[entry->unit], first, second))
            continue;
        if (entry->next == NONE && (entry->next = following(model, context, entry)) == NONE)
            return false;
        model->seen[entry->unit] = model->seen_stamp;
        put_in_order(model, count++, (struct arc){model->set.cost[(int)entry->cost], (uint32_t)entry->next, entry->unit});
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
        if (count > most)
            count = most;
        size_t place = size / 2 * most; /* the first arcs are those of steps that are not kept, by the units before */
        if (kept) {
            if (model->arc_count < LENGTHS * most)
                model->arc_count = LENGTHS * most;
            place = model->arc_count;
            model->arc_count += count;
        }
        if (place + count > UINT32_MAX || !reserve(&model->arcs, &model->arc_room, place + count, sizeof *model->arcs))
            return false;
        memcpy(model->arcs + place, model->found, count * sizeof *model->arcs);
        *step = (struct step){0.0, (uint32_t)place, (uint32_t)count};
    }
    if (!kept)
        return true;
    if (!room_for_a_step(model))
        return false;
    model->steps[step_slot(model, key)] = (struct known_step){key, *step};
    model->step_count++;
    return true;
}

void g2p_close(struct model *model)
{
    if (!model)
        return;
    void *owned[] = {
        model->units, model->seen, model->contexts, model->context_slots, model->entries, model->steps, model->arcs, model->found,
        model->written, model->written_slots, model->one.items, model->one.slots, model->two.items, model->two.slots,
        model->items, model->best, model->places, model->word, model->readings, model->merged, model->text,
        model->answer, model->shares, model,
    };
    for (size_t at = 0; at < sizeof owned / sizeof *owned; at++)
        free(owned[at]);
}

/* A model over a table's lines, which must outlive it, and over units: a line each of two characters of name, then the
letters, a tab and the phones. NULL if there is no memory or the units are of another kind. */
struct model *g2p_open(
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
    g2p_close(model);
    return NULL;
}
