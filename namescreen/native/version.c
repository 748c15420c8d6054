/* What namescreen/native/__init__.py expects: raised with every change of a function's arguments. */
int kernel_version(void)
{
    return 8;
}
