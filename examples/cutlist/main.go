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
	"flag"
	"fmt"
	"io"
	"os"
	"strings"

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
