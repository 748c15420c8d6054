/* What an international word keeps in all spellings: lexicon/foreign_forms.py, `skeleton`, which says why. */

#include <stdbool.h>
#include <string.h>

#include "foreign.h"

int foreign_undoubled(const char *from, int size, char *to)
{
    int written = 0;
    for (int at = 0; at < size; at++) {
        to[written++] = from[at];
        at += at + 1 < size && from[at + 1] == from[at];
    }
    return written;
}

static bool is_among(char letter, const char *letters) { return letter && strchr(letters, letter); }

static bool ends_with(const char *text, int size, const char *end)
{
    int length = (int)strlen(end);
    return length <= size && !memcmp(text + size - length, end, (size_t)length);
}

/* Put `new` where one of the `old` texts ends it, the longest that does; the new size. */
static int ending_replaced(char *text, int size, const char *const *old, const char *new)
{
    int longest = 0;
    for (; *old; old++)
        if ((int)strlen(*old) > longest && ends_with(text, size, *old))
            longest = (int)strlen(*old);
    if (!longest)
        return size;
    memcpy(text + size - longest, new, strlen(new));
    return size - longest + (int)strlen(new);
}

/* Put `new` in place of each of the `old` texts, the first that stands at a place; the new size. */
static int replaced(char *text, int size, const char *const *old, char new)
{
    int written = 0;
    for (int at = 0, length; at < size; at += length) {
        length = 0;
        for (const char *const *one = old; !length && *one; one++)
            if ((int)strlen(*one) <= size - at && !memcmp(text + at, *one, strlen(*one)))
                length = (int)strlen(*one);
        text[written++] = length ? new : text[at];
        length = length ? length : 1;
    }
    return written;
}

int foreign_skeleton(const char *stem, int size, char *to)
{
#define FORMS(noun) noun, noun "e", noun "er", noun "en", noun "es", noun "s"
#define FORMS_WITHOUT_E(noun) noun, noun "er", noun "en", noun "es", noun "s"
    static const char *const sion[] = {
        FORMS("tion"), FORMS("cion"), FORMS("zion"), "zioni", "cao", "coes", "tie", "ties", "cja", "cje", "cio", "ciok",
        "tio", "tiot", "sjon", "cija", "cije", "ciji", NULL};
    static const char *const iti[] = {
        FORMS_WITHOUT_E("itat"), FORMS_WITHOUT_E("idad"), FORMS_WITHOUT_E("idade"), FORMS_WITHOUT_E("iteit"),
        FORMS_WITHOUT_E("itet"), FORMS_WITHOUT_E("iteet"), FORMS_WITHOUT_E("itate"), NULL};
    static const char *const s[] = {"sch", "sh", "sz", "sj", NULL}, *const f[] = {"ph", NULL};
    static const char *const t[] = {"th", NULL}, *const k[] = {"qu", "ck", "ch", NULL};
    static const char *const e[] = {"ae", "oe", NULL}, *const u[] = {"ou", "eu", NULL};
    char text[LONGEST_SKELETON], wide[LONGEST_SKELETON];
    memcpy(text, stem, (size_t)size);
    size = ending_replaced(text, size, sion, "sion");
    size = ending_replaced(text, size, iti, "iti");
    size = replaced(text, size, s, 's');
    size = replaced(text, size, f, 'f');
    size = replaced(text, size, t, 't');
    size = replaced(text, size, k, 'k');
    int length = 0;
    for (int at = 0; at < size; at++) {
        char one = text[at], next = at + 1 < size ? text[at + 1] : 0;
        if (one == 'z' || (one == 'c' && is_among(next, "eiy")))
            one = 's';
        if (one == 'x') {
            wide[length++] = 'k';
            one = 's';
        }
        wide[length++] = is_among(one, "cq") ? 'k' : is_among(one, "yj") ? 'i' : one == 'w' ? 'v' : one;
    }
    length = replaced(wide, length, e, 'e');
    length = replaced(wide, length, u, 'u');
    length = foreign_undoubled(wide, length, to);
    while (length && is_among(to[length - 1], "aeiou"))
        length--;
    if (length && to[length - 1] == 'r') {
        for (length--; length && is_among(to[length - 1], "aeiou"); length--)
            ;
        to[length++] = 'r';
    } else if (length && to[length - 1] == 'f')
        to[length - 1] = 'v';
    return length;
}
