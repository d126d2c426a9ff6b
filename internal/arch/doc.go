// Package arch holds the tests that keep the library's promises about its own
// shape: which package may import which, what an exported name may mention,
// what is documented, and which tests each package brings. It exports nothing.
//
// The tests ask the go command for the packages, so a new package is covered
// from its first file; one that no import rule names fails until a rule does.
package arch
