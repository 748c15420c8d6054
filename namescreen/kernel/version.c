int kernel_version(void) { return 1; }
