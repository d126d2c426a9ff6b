// Package sheet draws.
package sheet
