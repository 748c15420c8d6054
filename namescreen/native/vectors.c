/* Word vectors one at a time, the arithmetic of lexicon/embedding.py and lexicon/association.py. */

#include <math.h>

#include "kernel.h"

/* A row of 8-bit integers as numbers of single precision and of length one together. */
void vectors_scaled(const int8_t *row, int64_t size, double *scaled)
{
    int64_t squares = 0;
    for (int64_t at = 0; at < size; at++)
        squares += row[at] * row[at];
    double length = squares ? (float)sqrt((double)squares) : 1.0;
    for (int64_t at = 0; at < size; at++)
        scaled[at] = (float)(row[at] / length);
}

/* The sum of the products of two vectors, in their order. */
double vectors_product(const double *one, const double *other, int64_t size)
{
    double sum = 0.0;
    for (int64_t at = 0; at < size; at++)
        sum += one[at] * other[at];
    return sum;
}
