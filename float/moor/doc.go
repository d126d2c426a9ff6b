// Package moor finds what holds a floating dock.
package moor
