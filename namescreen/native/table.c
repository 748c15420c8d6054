/* Binary search in a shipped table: lines of key, tab, value, in order of the bytes of their keys (tables.py). */

#include <string.h>

#include "kernel.h"

/* The offset, from `start` to `size`, of the first line whose key is not below `wanted`; `size` if there is none. A line
   without a tab is a key as a whole. */
int64_t table_seek(const char *data, int64_t start, int64_t size, const char *wanted, int64_t length)
{
    int64_t low = start, high = size;
    while (low < high) {
        int64_t at = (low + high) / 2;
        while (at > low && data[at - 1] != '\n')
            at--;
        const char *end = memchr(data + at, '\n', (size_t)(size - at));
        int64_t line = end ? end - (data + at) : size - at;
        const char *tab = memchr(data + at, '\t', (size_t)line);
        int64_t key = tab ? tab - (data + at) : line;
        int order = memcmp(data + at, wanted, (size_t)(key < length ? key : length));
        if (order < 0 || (!order && key < length))
            low = at + line + 1;
        else
            high = at;
    }
    return low < size ? low : size;
}

/* The offset of the line whose key is `wanted`; -1 if there is none. */
int64_t table_find(const char *data, int64_t start, int64_t size, const char *wanted, int64_t length)
{
    int64_t at = table_seek(data, start, size, wanted, length);
    int found = at + length < size && !memcmp(data + at, wanted, (size_t)length) && data[at + length] == '\t';
    return found ? at : -1;
}

/* For each of the keys in `wanted`, one a line, 1 in `found` if it is the key of a line, else 0. */
void table_among(const char *data, int64_t start, int64_t size, const char *wanted, int64_t length, char *found)
{
    for (const char *key = wanted, *last = wanted + length; key < last; found++) {
        const char *end = memchr(key, '\n', (size_t)(last - key));
        if (!end)
            return;
        *found = table_find(data, start, size, key, end - key) >= 0;
        key = end + 1;
    }
}
