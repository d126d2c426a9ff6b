// Package same holds the test that hashes many results of the library bit by bit and
// compares the hashes with those of other machines. It exports nothing.
//
// The compiler may fuse a product into a sum that follows it (arm64 does, amd64 and
// wasm do not), and package math has assembly of its own for Exp on amd64 and arm64, so
// that what such functions return may differ in its last place.
package same
