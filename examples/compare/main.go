// Compare sets several docks side by side: what each costs and weighs, how it floats,
// how many stand at one edge, its worst member, and the ice it needs.
//
//	compare                     the two embedded plans, both invented
//	compare A.json B.json       your own
//	compare -csv A.json B.json  for a spreadsheet, in SI
//
// Exit status: 0 compared, 2 a plan cannot be used.
package main

import (
	"context"
	"flag"
	"fmt"
	"io"
	"os"

	"example.org/floewright/frame/dock"
	"example.org/floewright/frame/plan"
)

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

func run(args []string, out, errs io.Writer) int {
	flags := flag.NewFlagSet("compare", flag.ContinueOnError)
	flags.SetOutput(errs)
	table := flags.Bool("csv", false, "comma-separated values")
	if flags.Parse(args) != nil {
		return 2
	}
	var reports []*dock.Report
	add := func(name string, in io.Reader) error {
		d, err := dock.Read(name, in)
		if err != nil {
			return err
		}
		r, err := d.Report(context.Background(), d.Units())
		reports = append(reports, r)
		return err
	}
	var err error
	for _, name := range flags.Args() {
		var f *os.File
		if f, err = os.Open(name); err == nil {
			err = add(name, f)
			f.Close()
		}
		if err != nil {
			break
		}
	}
	for i := 0; flags.NArg() == 0 && err == nil && i < len(plan.Demos()); i++ {
		var in io.Reader
		if in, err = plan.Demo(plan.Demos()[i]); err == nil {
			err = add(plan.Demos()[i], in)
		}
	}
	if err == nil {
		c := dock.Compare(reports...)
		if *table {
			err = c.WriteCSV(out)
		} else {
			err = c.WriteText(out)
		}
	}
	if err != nil {
		fmt.Fprintln(errs, "compare:", err)
		return 2
	}
	return 0
}
