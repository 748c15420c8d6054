#ifndef NAMESCREEN_NATIVE_H
#define NAMESCREEN_NATIVE_H

#define COUNT(bits) __builtin_popcountll(bits)
#ifndef INLINE
#define INLINE static inline __attribute__((always_inline))
#endif

#define HIDDEN __attribute__((visibility("hidden")))

/* Compiled twice, for every processor of the family and for those that count bits in one step; chosen at run time. */
#if defined(__x86_64__) && defined(__linux__) && defined(__GNUC__) && !defined(__clang__)
#define CLONES __attribute__((target_clones("popcnt", "default")))
#else
#define CLONES
#endif

#endif
