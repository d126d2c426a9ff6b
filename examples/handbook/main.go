// Handbook prints every outside value that the library is checked against beside
// what it computes, package by package and source by source, and exits with
// status 1 if one of them is out.
//
//	handbook                              every value
//	handbook -package ice -source army    those of one package whose source says so
//	handbook -totals                      the counts alone
//	handbook -csv                         one table with all columns, to load elsewhere
package main

import (
	"bufio"
	"flag"
	"fmt"
	"io"
	"os"

	"example.org/floewright/internal/published"
)

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr, published.All)) }

// run prints what the arguments ask for of the checks, and returns the exit status: 0 if all
// are met, 1 if one is out, 2 if nothing could be printed.
func run(args []string, out, errs io.Writer, all func() ([]published.Check, error)) int {
	flags := flag.NewFlagSet("handbook", flag.ContinueOnError)
	flags.SetOutput(errs)
	pkg := flags.String("package", "", "only this package, such as float/moor")
	source := flags.String("source", "", "only sources whose title, edition or place contains this")
	totals := flags.Bool("totals", false, "only the totals")
	table := flags.Bool("csv", false, "all columns as comma-separated values, without totals")
	if flags.Parse(args) != nil {
		return 2
	}
	fail := func(err error) int {
		fmt.Fprintln(errs, "handbook:", err)
		return 2
	}
	if flags.NArg() > 0 {
		return fail(fmt.Errorf("%q is not understood", flags.Arg(0)))
	}
	checks, err := all()
	if err != nil {
		return fail(err)
	}
	checks, err = choose(checks, *pkg, *source)
	if err != nil {
		return fail(err)
	}
	lines := published.Evaluate(checks)
	w := bufio.NewWriter(out)
	switch {
	case *table:
		err = writeCSV(w, lines)
	case *totals:
		err = writeTotals(w, lines)
	default:
		if err = writeLines(w, lines); err == nil {
			err = writeTotals(w, lines)
		}
	}
	if err == nil {
		err = w.Flush()
	}
	if err != nil {
		return fail(err)
	}
	if published.Total(lines).Out > 0 {
		return 1
	}
	return 0
}
