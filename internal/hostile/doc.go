// Package hostile holds the tests that call every exported function and method of the
// library with numbers that no builder means: NaN, infinities, zeros, negatives,
// subnormals and the largest there are, one at a time in an argument or field that was
// sound, in two or three drawn by a seed, and in all of them at once. Nothing may panic,
// hang, or give NaN without an error. It exports nothing.
//
// The list of names in names_test.go is written and kept current by internal/arch; methods
// are found by reflection. What reflection cannot invent (a beam that stands, a plan that
// reads) is made by hand in hand_test.go, made_test.go and received_test.go.
package hostile
