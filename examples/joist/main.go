// Joist answers one question: how far may a wet, treated joist span under a deck, and
// are the boards on it near enough?
//
//	joist -size 2x8 -species "Southern Pine" -grade No.2 -spacing "16 in" -load "40 psf"
package main

import (
	"flag"
	"fmt"
	"io"
	"os"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

func run(args []string, out, errs io.Writer) int {
	flags := flag.NewFlagSet("joist", flag.ContinueOnError)
	flags.SetOutput(errs)
	size := flags.String("size", "2x8", "of the joist")
	species := flags.String("species", "Southern Pine", "on its stamp")
	grade := flags.String("grade", "No.2", "on its stamp")
	smooth := flags.Bool("smooth", false, "its faces show no slits from treatment")
	spacing := flags.String("spacing", "16 in", "joist to joist, centre to centre")
	board := flags.String("board", "2x6", "of the decking")
	dead := flags.String("dead", "10 psf", "weight of the deck itself")
	load := flags.String("load", "40 psf", "on the deck")
	if flags.Parse(args) != nil {
		return 2
	}
	fail := func(err error) int {
		fmt.Fprintln(errs, "joist:", measure.RestateError(err, measure.US))
		return 2
	}
	var x [3]float64
	for i, f := range []struct {
		kind measure.Kind
		text string
	}{{measure.Length, *spacing}, {measure.Pressure, *dead}, {measure.Pressure, *load}} {
		var err error
		if x[i], err = f.kind.Parse(f.text); err != nil {
			return fail(err)
		}
	}
	section, err := lumber.Size(*size)
	if err != nil {
		return fail(err)
	}
	g, err := lumber.Lookup(*species, *grade, section)
	if err != nil {
		return fail(err)
	}
	m := lumber.Member{Section: section, Grade: g, Held: true, Smooth: *smooth, Repetitive: x[0] <= 24*measure.Inch}
	span, c, err := m.Span(x[0], x[1], x[2])
	if err != nil {
		return fail(err)
	}
	faces := "incised"
	if *smooth {
		faces = "smooth"
	}
	fmt.Fprintf(out, "%s %s %s, wet, %s, every %s: spans %s (%s)\n", *size, *species, *grade, faces, *spacing, measure.Length.Format(span, measure.US), c.Name)
	fmt.Fprintln(out, "  rule:", c.Rule)
	if !*smooth { // the slits of treatment take a fifth off bending: tables for smooth faces print more
		m.Smooth = true
		if span, _, err = m.Span(x[0], x[1], x[2]); err != nil {
			return fail(err)
		}
		fmt.Fprintln(out, "  if its faces show no slits, as tables of Southern Pine take it (-smooth):", measure.Length.Format(span, measure.US))
	}
	deck, err := lumber.Size(*board)
	if err != nil {
		return fail(err)
	}
	if c, err = (lumber.Board{Section: deck}).Check(x[0]); err != nil {
		return fail(err)
	}
	fmt.Fprintf(out, "%s boards on it: %s, %s\n  rule: %v\n", *board, c.Numbers(measure.US), c.Words(), c.Rule)
	fmt.Fprintln(out, "Between firm supports. Not sealed, not a permit drawing.")
	return 0
}
