/* Binary search in a shipped table: lines of key, tab, value, in order of the bytes of their keys (tables.py). */

#include <string.h>

#include "kernel.h"

#define EIGHT(byte) (UINT64_MAX / 255 * (byte))

/* Where the line of the byte at `at` begins, not before `low`: eight bytes at a time, as some lines have thousands. */
INLINE int64_t line_start(const char *data, int64_t low, int64_t at)
{
    for (; at - low >= 8; at -= 8) {
        uint64_t bytes;
        memcpy(&bytes, data + at - 8, 8);
        bytes ^= EIGHT('\n');
        if ((bytes - EIGHT(1)) & ~bytes & EIGHT(0x80))
            break;
    }
    while (at > low && data[at - 1] != '\n')
        at--;
    return at;
}

/* Whether the key of the line from `line` on, in data that end at `end`, is below `wanted`. */
INLINE int key_below(const char *line, const char *end, const char *wanted, int64_t length)
{
    for (int64_t at = 0; at < length; at++) {
        if (line + at == end || line[at] == '\t' || line[at] == '\n')
            return 1;
        if (line[at] != wanted[at])
            return (unsigned char)line[at] < (unsigned char)wanted[at];
    }
    return 0;
}

/* The offset, from `start` to `size`, of the first line whose key is not below `wanted`; `size` if there is none. A line
   without a tab is a key as a whole. */
int64_t table_seek(const char *data, int64_t start, int64_t size, const char *wanted, int64_t length)
{
    int64_t low = start, high = size;
    while (low < high) {
        int64_t middle = (low + high) / 2, at = line_start(data, low, middle);
        if (key_below(data + at, data + size, wanted, length)) {
            const char *end = memchr(data + middle, '\n', (size_t)(size - middle));
            low = end ? end - data + 1 : size;
        } else {
            high = at;
        }
    }
    return low < size ? low : size;
}

int64_t table_find(const char *data, int64_t start, int64_t size, const char *wanted, int64_t length)
{
    int64_t at = table_seek(data, start, size, wanted, length);
    int found = at + length < size && !memcmp(data + at, wanted, (size_t)length) && data[at + length] == '\t';
    return found ? at : -1;
}

/* A mapped table, and where its lines start. */
struct table { const char *data; int64_t start, size; };

/* As `table_find`; to hand over a table whole takes half the time of a call. */
int64_t table_at(const struct table *table, const char *wanted, int32_t length)
{
    return table_find(table->data, table->start, table->size, wanted, length);
}

/* Where the value of a key starts, times 2^24, plus how long it is; -1 if there is none, -2 if it is too long to say. */
int64_t table_value(const struct table *table, const char *wanted, int32_t length)
{
    int64_t at = table_at(table, wanted, length);
    if (at < 0)
        return -1;
    const char *value = table->data + at + length + 1, *end = memchr(value, '\n', (size_t)(table->data + table->size - value));
    int64_t size = (end ? end : table->data + table->size) - value;
    return size < 1 << 24 ? (int64_t)(value - table->data) << 24 | size : -2;
}

/* For each of `count` keys in `wanted`, one a line, 1 in `found` if it is the key of a line, else 0. */
void table_among(const char *data, int64_t start, int64_t size, const char *wanted, int64_t length, char *found,
                 int64_t count)
{
    for (const char *key = wanted, *last = wanted + length, *stop = found + count; found < stop; found++) {
        const char *end = memchr(key, '\n', (size_t)(last - key));
        if (!end)
            return;
        *found = table_find(data, start, size, key, end - key) >= 0;
        key = end + 1;
    }
}
