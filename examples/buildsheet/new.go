package main

import (
	"flag"
	"fmt"
	"io"
	"math"
	"strings"

	"example.org/floewright/float"
	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

// start is what a new plan is asked to start from.
type start struct {
	wanted                    bool
	length, width             string
	drum                      string
	girth, drumLong, drumMass string
	count                     int
}

// starting adds the flags of a new plan.
func starting(flags *flag.FlagSet) *start {
	var names []string
	for _, d := range float.Drums() {
		names = append(names, d.Name)
	}
	s := &start{}
	flags.BoolVar(&s.wanted, "new", false, "print a plan to start from and stop")
	flags.StringVar(&s.length, "length", "24 ft", "with -new: the dock's length")
	flags.StringVar(&s.width, "width", "10 ft", "with -new: the dock's width")
	flags.StringVar(&s.drum, "drum", "55 gal plastic, tight head", "with -new: drum, one of "+strings.Join(names, "; "))
	flags.StringVar(&s.girth, "girth", "", "with -new: tape around your drum instead")
	flags.StringVar(&s.drumLong, "drum-length", "", "with -new: over your drum's ends instead")
	flags.StringVar(&s.drumMass, "drum-mass", "", "with -new: your drum on a scale instead")
	flags.IntVar(&s.count, "count", 0, "with -new: drums at least; 0 finds how many")
	return s
}

// write prints the plan; where another number of drums comes out than was asked for, or
// too few, it says so on errs.
func (s *start) write(out, errs io.Writer, units string) error {
	d, err := float.LookupDrum(s.drum)
	if err != nil {
		return err
	}
	p := plan.Start{Drum: d.Name, Girth: math.Pi * d.Diameter.Value, Long: d.Length.Value, Mass: d.Mass.Value, Drums: s.count}
	for _, material := range []string{"steel", "plastic"} {
		if strings.Contains(d.Name, material) {
			p.Material = material
		}
	}
	if s.girth == "" && s.drumLong == "" { // else it is another drum
		p.Volume = d.Displacement.Value
	}
	if units == "si" {
		p.Units = measure.SI
	}
	for _, f := range []struct {
		kind measure.Kind
		text string
		into *float64
	}{
		{measure.Length, s.length, &p.Length},
		{measure.Length, s.width, &p.Width},
		{measure.Length, s.girth, &p.Girth},
		{measure.Length, s.drumLong, &p.Long},
		{measure.Mass, s.drumMass, &p.Mass},
	} {
		if f.text == "" {
			continue
		}
		if *f.into, err = f.kind.Parse(f.text); err != nil {
			return err
		}
	}
	remark, err := p.Remark()
	if err != nil {
		return err
	}
	text, err := p.JSON()
	if err != nil {
		return err
	}
	if remark != "" {
		fmt.Fprintln(errs, "buildsheet: "+remark)
	}
	_, err = out.Write(text)
	return err
}
