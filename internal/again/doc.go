// Package again holds the test that computes references of the library's elementary closed
// forms once more, with 256 bits and from the formulas as their sources print them: those that
// the packages keep in testdata/accuracy.csv, and fresh ones of a fixed seed. It exports nothing.
package again
