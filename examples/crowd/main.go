// Crowd answers one question of an invented dock, 8 ft x 16 ft on ten drums: how
// many people may stand along any one edge before it tips past 5 degrees or wets
// its deck? Nobody is counted for less than a grown person: whoever comes next may be one.
//
//	crowd -each "185 lb" -dock "900 lb" -gap "18 in"
package main

import (
	"flag"
	"fmt"
	"io"
	"os"

	"example.org/floewright/float"
	"example.org/floewright/lumber/measure"
)

// grown is a person as boats are made for them, dressed (46 CFR 170.090): 185 lb.
const grown = 185 * measure.Pound

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

func run(args []string, out, errs io.Writer) int {
	flags := flag.NewFlagSet("crowd", flag.ContinueOnError)
	flags.SetOutput(errs)
	each := flags.String("each", "185 lb", "one person, dressed and wet; 185 lb at least")
	mass := flags.String("dock", "900 lb", "the frame and deck, without drums")
	gap := flags.String("gap", "18 in", "edge that each takes")
	if flags.Parse(args) != nil {
		return 2
	}
	var crowd float.Crowd
	var frame float64
	for _, f := range []struct {
		kind measure.Kind
		text string
		to   *float64
	}{{measure.Mass, *each, &crowd.Each}, {measure.Mass, *mass, &frame}, {measure.Length, *gap, &crowd.Room}} {
		x, err := f.kind.Parse(f.text)
		if err != nil {
			fmt.Fprintln(errs, "crowd:", measure.RestateError(err, measure.US))
			return 2
		}
		*f.to = x
	}
	crowd.Inset, crowd.Each = 6*measure.Inch, max(crowd.Each, grown)
	var rules []float.Rule
	for _, name := range []string{"tilt at most 5 deg", "deck edge dry"} {
		c, err := float.LookupCriterion(name)
		if err != nil {
			fmt.Fprintln(errs, "crowd:", measure.RestateError(err, measure.US))
			return 2
		}
		rules = append(rules, c.AsLoaded().Rule(float.Deck{}))
	}
	post, err := dock(frame).Post(crowd, rules...)
	if err != nil {
		fmt.Fprintln(errs, "crowd:", measure.RestateError(err, measure.US))
		return 2
	}
	switch {
	case post.People < 0:
		fmt.Fprintln(out, "Post: nobody. The empty dock breaks a rule already.")
	case post.People == 0:
		fmt.Fprintf(out, "Post: nobody: 1 person of %s is one too many.\n", measure.Mass.Format(crowd.Each, measure.US))
	default:
		who := "1 person of " + measure.Mass.Format(crowd.Each, measure.US)
		if post.People != 1 {
			who = fmt.Sprintf("%d people of %s each", post.People, measure.Mass.Format(crowd.Each, measure.US))
		}
		fmt.Fprintf(out, "Post: %s along any one edge.\n", who)
	}
	switch {
	case post.Failure != nil:
		fmt.Fprintln(out, "What breaks:", measure.RestateError(post.Failure, measure.US))
	case post.Full:
		fmt.Fprintln(out, "There is no room for more.")
	default:
		c := post.Breaks
		fmt.Fprintf(out, "What breaks next: %s: %s: %s (%v)\n", c.Name, c.Numbers(measure.US), c.Words(), c.Rule)
	}
	for _, n := range post.Notices {
		fmt.Fprintln(out, n)
	}
	fmt.Fprintln(out, "Calm water, drums sound, nobody jumping. Not sealed, not a permit drawing.")
	return 0
}
