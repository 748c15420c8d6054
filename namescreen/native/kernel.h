/* What every file of the compiled code uses. */

#ifndef NAMESCREEN_KERNEL_H
#define NAMESCREEN_KERNEL_H

#include <stdint.h>

#define POPCOUNT(bits) __builtin_popcountll(bits)
#define INLINE static inline __attribute__((always_inline))
#define HIDDEN __attribute__((visibility("hidden")))

/* Compiled twice, for every processor of the family and for those with an instruction that counts bits; chosen at run
   time. */
#if defined(__x86_64__) && defined(__linux__) && defined(__GNUC__) && !defined(__clang__)
#define CLONES __attribute__((target_clones("popcnt", "default")))
#else
#define CLONES
#endif

/* Results below 0, as `checked` in library.py knows them. Arrays may come from a damaged file: a place or a length that
   points outside them ends the call with OUT_OF_BOUNDS. */
enum { NO_MEMORY = -1, OUT_OF_BOUNDS = -2 };

/* Whether the stretch `start` to `end` lies within `size` and is no longer than `longest`. */
INLINE int within(uint32_t start, uint32_t end, int64_t size, int64_t longest)
{
    return start <= end && end <= size && (int64_t)(end - start) <= longest;
}

/* table.c: the offset of the line whose key is `wanted`; -1 if there is none. */
int64_t table_find(const char *data, int64_t start, int64_t size, const char *wanted, int64_t length);

#endif
