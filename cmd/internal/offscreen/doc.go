// Package offscreen runs the built program on an X server of its own that has no monitor, watches what the program says
// on standard error, and reads the picture it draws. The set-up command uses it where there is no display, the
// end-to-end tests and the benchmarks of the window everywhere.
//
// Not in this package: anything of the program itself (it is known here only as a file to run), window managers, and
// systems other than those with Xvfb.
package offscreen
