// Storm answers one question of an invented dock, 8 ft x 16 ft on four lines in
// 12 ft of water: do they hold in a storm, and do they still with the lake two feet
// down in August?
//
//	storm -wind "25 mph" -down "2 ft"
package main

import (
	"flag"
	"fmt"
	"io"
	"math"
	"os"

	"example.org/floewright/float/moor"
	"example.org/floewright/lumber/measure"
)

const ft = measure.Foot

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

func run(args []string, out, errs io.Writer) int {
	flags := flag.NewFlagSet("storm", flag.ContinueOnError)
	flags.SetOutput(errs)
	wind := flags.String("wind", "25 mph", "the wind, mean over an hour, 33 ft up")
	down := flags.String("down", "2 ft", "how far the lake falls by August")
	if flags.Parse(args) != nil {
		return 2
	}
	var speed, fall float64
	for _, f := range []struct {
		kind measure.Kind
		text string
		to   *float64
	}{{measure.Speed, *wind, &speed}, {measure.Length, *down, &fall}} {
		x, err := f.kind.Parse(f.text)
		if err != nil {
			fmt.Fprintln(errs, "storm:", err)
			return 2
		}
		*f.to = x
	}
	if err := report(out, speed, fall); err != nil {
		fmt.Fprintln(errs, "storm:", err)
		return 2
	}
	return 0
}

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

func length(x float64) string { return measure.Length.Print(math.Round(x/ft*10)/10*ft, measure.US) }

func force(x float64) string { return fmt.Sprintf("%.0f lbf", x/measure.PoundForce) }

// mooring is four lines of chain and nylon to screw anchors off the corners.
func mooring() (*moor.Mooring, error) {
	chain, err1 := moor.Lookup("chain grade 30", "3/8 in")
	rope, err2 := moor.Lookup("nylon 3-strand", "3/4 in")
	shackle, err3 := moor.Lookup("shackle", "1/2 in")
	splice, err4 := moor.Factor("end of rope", "eye splice on thimble")
	design, err5 := moor.Factor("design", "rope, least")
	for _, err := range []error{err1, err2, err3, err4, err5} {
		if err != nil {
			return nil, err
		}
	}
	rope.Ends, rope.Design = []measure.Factor{splice}, design
	invented := &measure.Source{Title: "Invented for the example", Status: measure.OwnChoice}
	cleat := moor.Gear{Name: "cleat", Break: 6000 * measure.PoundForce, Source: invented}
	m := &moor.Mooring{}
	for i, c := range [4][2]float64{{1, 1}, {-1, 1}, {-1, -1}, {1, -1}} {
		m.Ties = append(m.Ties, moor.Tie{
			Name: [4]string{"lake right", "shore right", "shore left", "lake left"}[i],
			Line: moor.Line{Pieces: []moor.Piece{
				{Gear: chain, Length: 25 * ft, Weight: 1.2 * measure.PLF},
				{Gear: rope, Length: 15 * ft, Weight: 0.02 * measure.PLF, Stretch: 25e3 * measure.PoundForce},
			}},
			At: [2]float64{8 * ft * c[0], 4 * ft * c[1]}, Height: 1 * ft,
			Foot: [2]float64{33.5 * ft * c[0], 29.5 * ft * c[1]}, FootZ: -12 * ft,
			Fitting: cleat, Links: []moor.Gear{shackle},
			Ground: moor.Rated{Name: "screw anchor by its pull test", Hold: 2000 * measure.PoundForce, Steepest: 20 * math.Pi / 180, Source: invented},
		})
	}
	return m, nil
}

// storm blows on the dock, four people and a boat alongside, and raises waves over
// half a mile of lake to the south and west. The dock's x axis points north.
func storm(speed float64) moor.Weather {
	const sqft = ft * ft
	return moor.Weather{
		Wind: moor.Wind{Speed: speed},
		Above: []moor.Face{
			{Name: "frame and drums", End: 8 * sqft, Side: 16 * sqft, Height: 0.2, Shape: 1.2},
			{Name: "four people", End: 28 * sqft, Side: 28 * sqft, Height: 1.3, Shape: 1.3},
			{Name: "boat", End: 20 * sqft, Side: 50 * sqft, Height: 0.6, Shape: 1.5, At: [2]float64{0.8, 2.2}},
		},
		Fetches: moor.Fetches{100, 100, 200, 400, 800, 800, 600, 200}, // N, NE, E and so on
		Depth:   12 * ft, Length: 16 * ft, Breadth: 8 * ft, Draft: 1 * ft, Freeboard: 1 * ft,
	}
}
