// Package compare holds the comparison of quote/nest with the npm package maxrects-packer, a benchmark: see README.md.
//
// Not in this package: anything that the program uses.
package compare
