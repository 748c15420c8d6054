/* How far the words of a name cover many others, and are covered by them. Equal to the last bit to
   closeness/covering.py. */

#include <stddef.h>

#include "kernel.h"

/* _Rows in rows.py: ways to divide names into words, one after another. `words` are places in the columns of a table,
   `start` is where each row begins among them, `first` the first row of each name. Every row has a word, every name a
   row. */
typedef struct {
    const int64_t *words, *start, *first;
    int64_t word_count, row_count, name_count;
} Rows;

/* One name's words in a table: how alike each is to every word, a row of `width` numbers a word. */
typedef struct {
    const double *table;
    int64_t count, width;
} Own;

INLINE double greater(double one, double other)
{
    return one > other ? one : other;
}

INLINE double lesser(double one, double other)
{
    return one < other ? one : other;
}

static int64_t end_of(const int64_t *start, int64_t at, int64_t count, int64_t whole)
{
    return at + 1 < count ? start[at + 1] : whole;
}

/* Whether all stands within its array. */
static int well_formed(const Rows *rows, const Own *own)
{
    if (own->count < 1 || (rows->name_count && rows->first[0]) || (rows->row_count && rows->start[0]))
        return 0;
    for (int64_t name = 0; name < rows->name_count; name++)
        if (end_of(rows->first, name, rows->name_count, rows->row_count) <= rows->first[name] ||
            end_of(rows->first, name, rows->name_count, rows->row_count) > rows->row_count)
            return 0;
    for (int64_t row = 0; row < rows->row_count; row++)
        if (end_of(rows->start, row, rows->row_count, rows->word_count) <= rows->start[row] ||
            end_of(rows->start, row, rows->row_count, rows->word_count) > rows->word_count)
            return 0;
    for (int64_t at = 0; at < rows->word_count; at++)
        if (rows->words[at] < 0 || rows->words[at] >= own->width)
            return 0;
    return 1;
}

/* How alike the word of a name is to the one of a row that is most like it. */
INLINE double best_in_row(const Own *own, int64_t word, const int64_t *words, int64_t size)
{
    const double *alike = own->table + word * own->width;
    double best = alike[words[0]];
    for (int64_t at = 1; at < size; at++)
        best = greater(alike[words[at]], best);
    return best;
}

/* How alike the word of a row is to the one of the name that is most like it. */
INLINE double best_of_own(const Own *own, int64_t place)
{
    double best = own->table[place];
    for (int64_t word = 1; word < own->count; word++)
        best = greater(own->table[word * own->width + place], best);
    return best;
}

/* The shares of the name and of a row that are covered. */
INLINE void cover(const Own *own, const double *shares, const int64_t *words, const double *others, int64_t size,
                  double *less, double *better)
{
    double ours = 0, theirs = 0;
    for (int64_t word = 0; word < own->count; word++)
        ours += shares[word] * best_in_row(own, word, words, size);
    for (int64_t at = 0; at < size; at++)
        theirs += best_of_own(own, words[at]) * others[at];
    *less = lesser(ours, theirs);
    *better = greater(ours, theirs);
}

/* The strength of what the name and a row share, and the lesser of the weights of the strongest words that either has
   left over. */
static void share(const Own *own, const double *weights, const int64_t *words, const double *others, int64_t size,
                  double *shared, double *left)
{
    double ours_apart = 1, theirs_apart = 1, ours_left = 0, theirs_left = 0;
    for (int64_t word = 0; word < own->count; word++) {
        const double *alike = own->table + word * own->width;
        double strongest = alike[words[0]] * lesser(weights[word], others[0]);
        for (int64_t at = 1; at < size; at++)
            strongest = greater(alike[words[at]] * lesser(weights[word], others[at]), strongest);
        ours_apart *= 1 - strongest;
        double rest = weights[word] * (1 - best_in_row(own, word, words, size));
        ours_left = word ? greater(rest, ours_left) : rest;
    }
    for (int64_t at = 0; at < size; at++) {
        double strongest = own->table[words[at]] * lesser(weights[0], others[at]);
        for (int64_t word = 1; word < own->count; word++)
            strongest = greater(own->table[word * own->width + words[at]] * lesser(weights[word], others[at]), strongest);
        theirs_apart *= 1 - strongest;
        double rest = others[at] * (1 - best_of_own(own, words[at]));
        theirs_left = at ? greater(rest, theirs_left) : rest;
    }
    *shared = 1 - greater(ours_apart, theirs_apart);
    *left = lesser(ours_left, theirs_left);
}

/* For every name the most of its rows of the first `many` of four values: what is covered of either, the lesser and the
   greater, and, for four, what they share and what is kept. Returns 0 or an error. */
static int64_t most_of_rows(const Rows *rows, const Own *own, const double *shares, const double *others,
                            const double *weights, const double *other_weights, double *const *all, int many)
{
    if (!well_formed(rows, own))
        return OUT_OF_BOUNDS;
    for (int64_t name = 0; name < rows->name_count; name++) {
        int64_t end = end_of(rows->first, name, rows->name_count, rows->row_count);
        for (int64_t row = rows->first[name]; row < end; row++) {
            int64_t at = rows->start[row], size = end_of(rows->start, row, rows->row_count, rows->word_count) - at;
            const int64_t *words = rows->words + at;
            double here[4], left;
            cover(own, shares, words, others + at, size, &here[0], &here[1]);
            if (many > 2) {
                share(own, weights, words, other_weights + at, size, &here[2], &left);
                here[3] = here[1] * (1 - left);
            }
            for (int each = 0; each < many; each++)
                all[each][name] = row == rows->first[name] ? here[each] : greater(here[each], all[each][name]);
        }
    }
    return 0;
}

/* covering.covered: for every name the most of its rows. `shares` are those of the name's words, `others` those of the
   words of every row. Returns 0 or an error. */
int64_t rows_covered(const Rows *rows, const double *table, int64_t count, int64_t width, const double *shares,
                     const double *others, double *less, double *better)
{
    Own own = {table, count, width};
    double *all[] = {less, better};
    return most_of_rows(rows, &own, shares, others, NULL, NULL, all, 2);
}

/* covering.elements: as `rows_covered`, and for every name the most that its rows share (`shared`) and keep (`kept`);
   `weights` and `other_weights` are the strengths of the words. Returns 0 or an error. */
int64_t rows_elements(const Rows *rows, const double *table, int64_t count, int64_t width, const double *shares,
                      const double *others, const double *weights, const double *other_weights, double *less,
                      double *better, double *shared, double *kept)
{
    Own own = {table, count, width};
    double *all[] = {less, better, shared, kept};
    return most_of_rows(rows, &own, shares, others, weights, other_weights, all, 4);
}
