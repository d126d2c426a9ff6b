// Package ice reads a survey of lake ice, applies the rules that public bodies
// print for loads on it, and says what they do not rule out.
package ice
