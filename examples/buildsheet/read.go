package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"strings"

	"example.org/floewright/frame/dock"
	"example.org/floewright/frame/plan"
	"example.org/floewright/ice/season"
	"example.org/floewright/lumber/measure"
)

// wrap prints a text in 80 columns, its further lines indented.
func wrap(out io.Writer, text string) {
	line := ""
	for _, word := range strings.Fields(text) {
		if line != "" && len(line)+1+len(word) > 80 {
			fmt.Fprintln(out, line)
			line = "   "
		}
		if line != "" {
			line += " "
		}
		line += word
	}
	fmt.Fprintln(out, line)
}

// An order is what the flags ask for.
type order struct {
	plan, demo, units, dir, winters string
	explain                         bool
	start                           *start
}

// options reads the flags; nil without an error where they have said what is wrong.
func options(args []string, errs io.Writer) (*order, error) {
	o := &order{}
	flags := flag.NewFlagSet("buildsheet", flag.ContinueOnError)
	flags.SetOutput(errs)
	flags.StringVar(&o.plan, "plan", "", "plan `file` to read")
	flags.StringVar(&o.demo, "demo", "swim", "embedded plan to use without -plan: "+strings.Join(plan.Demos(), " or "))
	flags.StringVar(&o.units, "units", "", "us or si; the plan's own if not given")
	flags.StringVar(&o.dir, "out", "", "`folder` to write pages, pictures, lists and the report as JSON into, all or none")
	flags.StringVar(&o.winters, "winters", "", "table of daily temperatures of past winters, `file` with date,temp or date,high,low in °C")
	flags.BoolVar(&o.explain, "explain", false, "print every field of a plan file and stop")
	o.start = starting(flags)
	if flags.Parse(args) != nil {
		return nil, nil
	}
	if flags.NArg() > 0 || o.units != "" && o.units != "us" && o.units != "si" {
		return nil, errors.New("-units is us or si, and a plan file is named with -plan")
	}
	return o, nil
}

// asked returns the units that are asked for, others if none are.
func (o *order) asked(otherwise measure.System) measure.System {
	switch o.units {
	case "us":
		return measure.US
	case "si":
		return measure.SI
	}
	return otherwise
}

// dock reads the plan, and the winters beside it.
func (o *order) dock() (*dock.Dock, error) {
	d, err := o.read()
	if err != nil || o.winters == "" {
		return d, err
	}
	f, err := os.Open(o.winters)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return d.WithWinters(o.winters, f, season.Options{})
}

func (o *order) read() (*dock.Dock, error) {
	if o.plan == "" {
		r, err := plan.Demo(o.demo)
		if err != nil {
			return nil, err
		}
		return dock.Read("demo "+o.demo, r)
	}
	f, err := os.Open(o.plan)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return dock.Read(o.plan, f)
}
