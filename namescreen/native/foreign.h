/* Words of other languages: what the files about them share. */

#ifndef FOREIGN_H
#define FOREIGN_H

#include "kernel.h"

enum {
    LONGEST = 64, /* letters of a word that is looked at */
    LONGEST_FORM = LONGEST + 16, /* of what it may have come from */
    LONGEST_SKELETON = 2 * LONGEST_FORM + 8,
};

/* Letters with doubled ones made single; the size of what is written to `to`. */
HIDDEN int foreign_undoubled(const char *from, int size, char *to);

/* The skeleton of at most `LONGEST_FORM` letters a to z; its size. `to` has room for `LONGEST_SKELETON`. */
HIDDEN int foreign_skeleton(const char *stem, int size, char *to);

#endif
