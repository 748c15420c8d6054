/* VERSION in library.py: raised with every change of a function's arguments. */
int kernel_version(void)
{
    return 27;
}
