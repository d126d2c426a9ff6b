// Cutlist prints what is cut from which board of a plan, what is bought, what goes
// on the wood, and what is carried to the lake.
//
//	cutlist                     the embedded swim platform
//	cutlist -demo work          the other embedded plan
//	cutlist -plan FILE          your own
//	cutlist -csv cut            the cut list for a spreadsheet; also purchase,
//	                            hardware, carry
//
// Exit status: 0 printed, 2 the plan cannot be used.
package main

import (
	"context"
	"flag"
	"fmt"
	"io"
	"os"
	"strings"

	"example.org/floewright/frame/dock"
	"example.org/floewright/frame/plan"
)

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

func run(args []string, out, errs io.Writer) int {
	flags := flag.NewFlagSet("cutlist", flag.ContinueOnError)
	flags.SetOutput(errs)
	file := flags.String("plan", "", "plan `file` to read")
	demo := flags.String("demo", "swim", "embedded plan to use without -plan: "+strings.Join(plan.Demos(), " or "))
	list := flags.String("csv", "", "cut, purchase, hardware or carry: that list as comma-separated values")
	if flags.Parse(args) != nil || flags.NArg() > 0 {
		return 2
	}
	if err := write(*file, *demo, *list, out); err != nil {
		fmt.Fprintln(errs, err)
		return 2
	}
	return 0
}

func write(file, demo, list string, out io.Writer) error {
	in, err := open(file, demo)
	if err != nil {
		return err
	}
	defer in.Close()
	name := file
	if name == "" {
		name = "demo " + demo
	}
	d, err := dock.Read(name, in)
	if err != nil {
		return err
	}
	s, err := d.Shop(context.Background())
	if err != nil {
		return err
	}
	r := dock.Report{Shop: s}
	switch list {
	case "":
		return s.WriteText(out)
	case "cut":
		return r.WriteCutList(out)
	case "purchase":
		return r.WritePurchaseList(out)
	case "hardware":
		return r.WriteHardwareList(out)
	case "carry":
		return r.WriteCarryList(out)
	}
	return fmt.Errorf("cutlist: there is no list %q: want cut, purchase, hardware or carry", list)
}

func open(file, demo string) (io.ReadCloser, error) {
	if file != "" {
		return os.Open(file)
	}
	r, err := plan.Demo(demo)
	return io.NopCloser(r), err
}
