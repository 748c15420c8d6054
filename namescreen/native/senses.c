/* The words related to a word through its senses: the loops of lexicon/sense_similarity.py over the senses table and the
   hierarchy of senses (lexicon/hierarchy.py), with the same results to the last bit. */

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "kernel.h"

enum { SLOTS = 1 << 19, MOST_WORDS = SLOTS / 2, MOST_ABOVE = 1 << 10, STRENGTHS = 9, MEMOS = 256 };

/* The lines of the senses table, and the hierarchy by their numbers: how many senses are below each, where those directly
   above each begin, these (twice their number, plus one), and the same of those directly below. `best`, `touched`, `slot`
   and `word` are room for a call: `best` and `slot` are all 0 between calls. */
typedef struct {
    const char *text;
    int64_t size, rows;
    const uint32_t *below, *above;
    uint32_t *line, *first_above, *narrower, *first_narrower, *touched, *slot;
    double *best;
    struct word *word;
} Senses;

/* A word met: where its letters begin in the text that is written, its slot, and its closeness. */
struct word {
    uint32_t start, length, slot, kept;
    double score;
};
_Static_assert(sizeof(struct word) == 24 && SLOTS == 1 << 19, "senses.py makes room for these");

/* What relations count, by the names of sense_similarity.py: `power` are the first powers of the factor for a step, and
   `log_nouns` and `log_verbs` the logarithms of how many senses there are. */
typedef struct {
    double power[6], floor, hierarchy, one_step, too_wide, strongest, log_nouns, log_verbs;
} Measures;

/* What is asked: ids of senses, a line each, with the strength of the word's sense: first the word's `own`, whose cousins
   are looked for, then those that relations lead to, each with the weight of the relation; and words that are wanted
   however far they are, a line each. */
typedef struct {
    const char *ids, *wanted;
    const double *weights, *strengths;
    const Measures *measures;
    int64_t count, own, ids_size, wanted_size;
} Asked;

/* The closeness through a relation of this weight for each strength of the sense it leads to. */
typedef struct {
    double weight, strength, by_strength[STRENGTHS + 1];
} Memo;

/* The hierarchy's lists in order; OUT_OF_BOUNDS if they do not belong to the table. */
int64_t senses_order(const Senses *all, const uint32_t *counts, int64_t many)
{
    int64_t row = 0, total = 0;
    for (const char *at = all->text, *end = at + all->size; at < end; row++) {
        const char *stop = memchr(at, '\n', (size_t)(end - at));
        if (!stop || row == all->rows)
            return OUT_OF_BOUNDS;
        all->line[row] = (uint32_t)(at - all->text);
        at = stop + 1;
    }
    if (row != all->rows)
        return OUT_OF_BOUNDS;
    all->line[row] = (uint32_t)all->size;
    for (row = 0; row < all->rows; row++) {
        all->first_above[row] = (uint32_t)total;
        total += counts[row];
        if (total > many)
            return OUT_OF_BOUNDS;
    }
    all->first_above[row] = (uint32_t)total;
    if (total != many)
        return OUT_OF_BOUNDS;
    uint32_t *next = calloc((size_t)(2 * all->rows + 1), sizeof *next);
    if (!next)
        return NO_MEMORY;
    for (int64_t at = 0; at < many; at++) {
        if (all->above[at] >> 1 >= all->rows) {
            free(next);
            return OUT_OF_BOUNDS;
        }
        next[all->above[at] + 1]++;
    }
    for (int64_t at = 0; at < 2 * all->rows; at++)
        next[at + 1] += next[at];
    for (row = 0; row <= all->rows; row++)
        all->first_narrower[row] = next[2 * row];
    for (row = 0; row < all->rows; row++)
        for (uint32_t at = all->first_above[row]; at < all->first_above[row + 1]; at++)
            all->narrower[next[all->above[at]]++] = (uint32_t)row;
    free(next);
    return 0;
}

/* A number of at least 0 to four places, as Python rounds: the nearest, of two as near the even one. */
INLINE double rounded(double value)
{
    double whole = value * 1e4, rest = fma(value, 1e4, -whole), low = floor(whole), over = whole - low;
    if (over > 0.5 || (over == 0.5 && (rest > 0 || (rest == 0 && fmod(low, 2.0) != 0))))
        low += 1;
    return low / 1e4;
}

INLINE double between(const Measures *by, double weight, double strength, double other)
{
    return rounded(weight * sqrt(strength * other) / by->strongest);
}

static const double *by_strength(const Measures *by, Memo *memos, double weight, double strength)
{
    uint64_t bits;
    memcpy(&bits, &weight, sizeof bits);
    Memo *memo = &memos[(bits * 0x9E3779B97F4A7C15u >> 48 ^ (uint64_t)strength) % MEMOS];
    if (memo->weight != weight || memo->strength != strength) {
        memo->weight = weight;
        memo->strength = strength;
        for (int other = 0; other <= STRENGTHS; other++)
            memo->by_strength[other] = between(by, weight, strength, other);
    }
    return memo->by_strength;
}

/* The slot of a word of `length` letters at the end of what is written. */
static uint32_t slot_of(const Senses *all, const char *written, const char *letters, uint32_t length)
{
    uint64_t hash = 14695981039346656037u;
    for (uint32_t at = 0; at < length; at++)
        hash = (hash ^ (unsigned char)letters[at]) * 1099511628211u;
    for (uint32_t slot = (uint32_t)(hash >> 20) % SLOTS;; slot = (slot + 1) % SLOTS) {
        uint32_t found = all->slot[slot];
        if (!found || (all->word[found - 1].length == length &&
                       !memcmp(written + all->word[found - 1].start, letters, length)))
            return slot;
    }
}

/* Take up the words of a sense, in lower case; gives how many words there are, and moves the end of what is written. */
static int64_t add(const Senses *all, int64_t row, const double *scores, int64_t words, char *written, int64_t *end)
{
    const char *at = all->text + all->line[row], *stop = all->text + all->line[row + 1];
    for (int bars = 0; bars < 2; bars++) {
        at = memchr(at, '|', (size_t)(stop - at));
        if (!at++)
            return OUT_OF_BOUNDS;
    }
    while (at < stop && *at != '|') {
        char *letters = written + *end;
        uint32_t length = 0;
        while (at + length < stop && at[length] != ',' && at[length] != '|') {
            if (*end + length >= all->size)
                return OUT_OF_BOUNDS;
            letters[length] = (char)(at[length] >= 'A' && at[length] <= 'Z' ? at[length] + 32 : at[length]);
            length++;
        }
        at += length + (at + length < stop && at[length] == ',');
        int strength = length ? letters[--length] - '0' : -1;
        if (strength < 0 || strength > STRENGTHS || words == MOST_WORDS)
            return OUT_OF_BOUNDS;
        uint32_t slot = slot_of(all, written, letters, length);
        if (!all->slot[slot]) {
            all->word[words] = (struct word){(uint32_t)*end, length, slot, 0, 0.0};
            all->slot[slot] = (uint32_t)++words;
            letters[length] = '\n';
            *end += length + 1;
        }
        struct word *word = &all->word[all->slot[slot] - 1];
        if (scores[strength] > word->score)
            word->score = scores[strength];
    }
    return words;
}

/* As `SenseSimilarity._find_information_below`: most senses have nothing below them, which needs no logarithm. */
INLINE double information(const Senses *all, double log_total, int64_t row)
{
    if (!log_total || !all->below[row])
        return log_total ? 1.0 : 0.0;
    return 1 - log((double)all->below[row] + 1) / log_total;
}

/* Lin's measure, as `SenseSimilarity._lin`. */
INLINE double lin(const Measures *by, double shared, double own, double other, int steps, int narrow)
{
    double total = own + other;
    double score = total ? by->hierarchy * 2 * shared / total * by->power[steps > 1 ? steps - 1 : 0] : 0.0;
    return narrow && steps == 1 && by->one_step > score ? by->one_step : score;
}

/* A list of senses that grows. */
typedef struct {
    uint32_t *rows;
    int64_t count, room;
} Layer;

static int push(Layer *layer, uint32_t row)
{
    if (layer->count == layer->room) {
        int64_t room = layer->room ? 2 * layer->room : 1 << 10;
        uint32_t *rows = realloc(layer->rows, (size_t)room * sizeof *rows);
        if (!rows)
            return 0;
        layer->rows = rows;
        layer->room = room;
    }
    layer->rows[layer->count++] = row;
    return 1;
}

/* The senses up to three steps away through a common ancestor, as `SenseSimilarity._cousins`: puts how close they are into
   `best`, and those met into `touched`; gives how many. */
static int64_t cousins(const Senses *all, const Measures *by, int64_t number, double log_total, Layer *layer, Layer *next)
{
    uint32_t above[MOST_ABOVE];
    int up_to[3] = {1, 1, 1}, met = 1, first = 0;
    above[0] = (uint32_t)number;
    for (int step = 1; step < 3; step++) {
        int last = met;
        for (int at = first; at < last; at++)
            for (uint32_t up = all->first_above[above[at]]; up < all->first_above[above[at] + 1]; up++) {
                uint32_t one = all->above[up] >> 1;
                int known = 0;
                while (known < met && above[known] != one)
                    known++;
                if (known == met && met == MOST_ABOVE)
                    return OUT_OF_BOUNDS;
                if (known == met)
                    above[met++] = one;
            }
        first = last;
        up_to[step] = met;
    }
    double own = information(all, log_total, number);
    int64_t touched = 0;
    for (int at = 0; at < met; at++) {
        int up = at < up_to[0] ? 0 : at < up_to[1] ? 1 : 2;
        double shared = information(all, log_total, above[at]);
        int narrow = all->below[above[at]] <= by->too_wide;
        layer->count = 0;
        if (!push(layer, above[at]))
            return NO_MEMORY;
        for (int down = 0; down <= (up ? 3 - up : 2); down++) {
            int steps = up + down;
            if (down) {
                next->count = 0;
                for (int64_t one = 0; one < layer->count; one++) {
                    uint32_t row = layer->rows[one];
                    if (all->below[row])
                        for (uint32_t under = all->first_narrower[row]; under < all->first_narrower[row + 1]; under++)
                            if (!push(next, all->narrower[under]))
                                return NO_MEMORY;
                }
                Layer other = *layer;
                *layer = *next;
                *next = other;
            }
            for (int64_t one = 0; one < layer->count; one++) {
                uint32_t row = layer->rows[one];
                double score = lin(by, shared, own, information(all, log_total, row), steps, narrow);
                if (score > all->best[row]) {
                    if (!all->best[row])
                        all->touched[touched++] = row;
                    all->best[row] = score;
                }
            }
            double sum = own + shared;
            if (steps && by->hierarchy * 2 * shared / (sum ? sum : 1.0) * by->power[steps] < by->floor)
                break;
        }
    }
    return touched;
}

/* The number of the sense whose line begins at an offset. */
INLINE int64_t row_at(const Senses *all, int64_t offset)
{
    int64_t low = 0, high = all->rows;
    while (high - low > 1) {
        int64_t middle = (low + high) / 2;
        if (all->line[middle] <= offset)
            low = middle;
        else
            high = middle;
    }
    return low;
}

static int64_t take_up(const Senses *all, const Asked *asked, char *written, int64_t *end, Layer *layer, Layer *next)
{
    const Measures *by = asked->measures;
    Memo memos[MEMOS] = {{0}};
    int64_t words = 0;
    const char *id = asked->ids, *last = id + asked->ids_size;
    int64_t *rows = malloc((size_t)(asked->own + 1) * sizeof *rows);
    if (!rows)
        return NO_MEMORY;
    for (int64_t at = 0; at < asked->count && words >= 0; at++) {
        const char *stop = memchr(id, '\n', (size_t)(last - id));
        int64_t offset = stop ? table_find(all->text, 0, all->size, id, stop - id) : -1;
        if (offset < 0) {
            words = OUT_OF_BOUNDS;
            break;
        }
        int64_t row = row_at(all, offset);
        if (at < asked->own)
            rows[at] = row;
        else
            words = add(all, row, by_strength(by, memos, asked->weights[at], asked->strengths[at]), words, written, end);
        id = stop + 1;
    }
    for (int64_t at = 0; at < asked->own && words >= 0; at++) {
        double strength = asked->strengths[at];
        char pos = all->text[all->line[rows[at]]];
        double log_total = pos == 'n' ? by->log_nouns : pos == 'v' ? by->log_verbs : 0.0;
        int64_t touched = cousins(all, by, rows[at], log_total, layer, next);
        if (touched < 0) {
            words = touched;
            break;
        }
        all->best[rows[at]] = 0.0;
        for (int64_t one = 0; one < touched; one++) {
            double score = all->best[all->touched[one]];
            all->best[all->touched[one]] = 0.0;
            const double *scores = by_strength(by, memos, score, strength);
            if (score && scores[STRENGTHS] >= by->floor && words >= 0)
                words = add(all, all->touched[one], scores, words, written, end);
        }
    }
    free(rows);
    return words;
}

/* The words related to one, in the order in which they are met, a line each, with how close each is; only those that are
   close enough, and wanted ones. Gives the bytes written, and their number in `count`. */
int64_t senses_neighbours(const Senses *all, const Asked *asked, char *written, double *scores, int64_t *count)
{
    Layer layer = {0}, next = {0};
    int64_t end = 0, words = take_up(all, asked, written, &end, &layer, &next), size = 0;
    free(layer.rows);
    free(next.rows);
    *count = 0;
    if (words < 0) { /* the room is made ready for the next call */
        memset(all->slot, 0, SLOTS * sizeof *all->slot);
        memset(all->best, 0, (size_t)all->rows * sizeof *all->best);
        return words;
    }
    for (const char *word = asked->wanted, *last = word + asked->wanted_size; word < last;) {
        const char *stop = memchr(word, '\n', (size_t)(last - word));
        if (!stop)
            break;
        uint32_t found = all->slot[slot_of(all, written, word, (uint32_t)(stop - word))];
        if (found)
            all->word[found - 1].kept = 1;
        word = stop + 1;
    }
    for (int64_t at = 0; at < words; at++) {
        const struct word *word = &all->word[at];
        all->slot[word->slot] = 0;
        if (word->kept || word->score >= asked->measures->floor) {
            memmove(written + size, written + word->start, word->length + 1);
            size += word->length + 1;
            scores[(*count)++] = word->score;
        }
    }
    return size;
}
