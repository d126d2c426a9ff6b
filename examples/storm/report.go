package main

import (
	"fmt"
	"io"
	"math"

	"example.org/floewright/lumber/measure"
)

// report surveys the dock at both levels, and without one line after another.
func report(out io.Writer, speed, fall float64) error {
	m, err := mooring()
	if err != nil {
		return err
	}
	weather := storm(speed)
	for _, level := range []float64{0, -fall} {
		s, err := m.Survey([]float64{level}, weather.Load, 72)
		if err != nil {
			return err
		}
		fmt.Fprintf(out, "Lake down %s: the dock moves up to %s.\n", length(-level), length(s.Offset))
		for _, part := range []string{"piece", "fitting", "ground"} {
			c := s.Worst(part)
			fmt.Fprintf(out, "  %s: %s: %v\n", c.Name, c.Numbers(measure.US), c.Verdict())
		}
		for _, n := range s.Notes {
			fmt.Fprintln(out, " ", n)
		}
	}
	losses, err := m.Losses([]float64{0, -fall}, weather.Load, 72)
	if err != nil {
		return err
	}
	for _, s := range losses {
		if s.Err != nil {
			fmt.Fprintf(out, "Without %s: %v.\n", s.Lost, s.Err)
			continue
		}
		c := s.Worst()
		fmt.Fprintf(out, "Without %s it moves up to %s; %s: %v.\n", s.Lost, length(s.Offset), c.Name, c.Verdict())
	}
	bands, err := m.Bands(-8*ft, 12*ft)
	if err != nil {
		return err
	}
	for _, b := range bands[:1] {
		fmt.Fprintf(out, "Lines: %v at %s down, %v above %s up.\n", b.Below, length(-b.Low), b.Above, length(b.High))
	}
	// What the fittings take of it, for the frame: the storm from astern.
	load, err := weather.Load(0)
	if err != nil {
		return err
	}
	p, err := m.Rest(0, load)
	if err != nil {
		return err
	}
	forces, err := m.Forces(p)
	if err != nil {
		return err
	}
	for _, f := range forces {
		fmt.Fprintf(out, "The cleat %s is pulled with %s along, %s across, %s down.\n",
			f.Name, force(math.Abs(f.X)), force(math.Abs(f.Y)), force(-f.Z))
	}
	fmt.Fprintln(out, "Invented dock, steady loads. Look at every line each spring; local rules and the owner of the lake bed decide.")
	return nil
}

func length(x float64) string { return measure.Length.Format(math.Round(x/ft*10)/10*ft, measure.US) }

func force(x float64) string { return fmt.Sprintf("%.0f lbf", x/measure.PoundForce) }
