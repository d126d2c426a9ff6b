package action_test

import (
	"fmt"
	"log"

	"example.org/floewright/ice/action"
	"example.org/floewright/lumber/measure"
)

// span prints a force in both systems of units.
func span(s action.Span) string {
	number := func(x float64) string {
		if x < 10 {
			return fmt.Sprintf("%.1f", x)
		}
		return fmt.Sprintf("%.0f", x)
	}
	return fmt.Sprintf("%s to %s kN (%s to %s kip)", number(s.Low/measure.Kilonewton), number(s.High/measure.Kilonewton),
		number(s.Low/measure.Kip), number(s.High/measure.Kip))
}

// A dock frozen into a foot of ice hangs on posts. The lake drops two inches,
// and the sheet hangs on each drum (invented figures).
func ExampleCover_Uplift() {
	cover := action.Cover{Thickness: 12 * measure.Inch}
	drum := action.Body{Length: 35 * measure.Inch, Breadth: 23 * measure.Inch}
	lift, err := cover.Uplift(drum, -2*measure.Inch)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println("unbroken sheet:", span(lift.Elastic))
	for _, c := range lift.Caps {
		fmt.Println(c.Name+":", span(c))
	}
	fmt.Println("on one drum:", span(lift.Force))
	fmt.Println("governed by", lift.Force.Name)
	check, err := lift.Check("bracket of the drum", 900*measure.PoundForce)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(check.Words()+":", check.Notes[0])
	// Output:
	// unbroken sheet: 61 to 152 kN (14 to 34 kip)
	// bending of the ice: 49 to 261 kN (11 to 59 kip)
	// on one drum: 49 to 152 kN (11 to 34 kip)
	// governed by unbroken sheet
	// short: slack the lines, cut it free, or expect loss
}

// The long side of a dock that a wall or a row of posts holds.
func ExampleCover_Wall() {
	wall, err := action.Cover{Thickness: 12 * measure.Inch}.Wall(-2*measure.Inch, action.Span{})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%.1f to %.1f kN/m, governed by %s\n", wall.Force.Low/1e3, wall.Force.High/1e3, wall.Force.Name)
	fmt.Printf("first crack at %.0f mm, the hinged sheet by %.0f mm\n", wall.Crack.Low/measure.Millimetre, wall.Crack.High/measure.Millimetre)
	// Output:
	// 1.4 to 4.3 kN/m, governed by unbroken sheet
	// first crack at 17 mm, the hinged sheet by 590 mm
}

// Break-up: a mile of open ice, 16 in thick, lies against the end of the dock
// in a wind of 30 mph; two lines hold 4 kN each (invented figures).
func ExampleDrift_Push() {
	drift := action.Drift{
		Wind: 30 * measure.MPH, Reach: measure.Mile, Touching: true,
		Face:  action.Face{Width: 10 * measure.Foot},
		Cover: action.Cover{Thickness: 16 * measure.Inch},
	}
	for _, floe := range []struct {
		name  string
		width float64
	}{{"a strip as wide as the dock", 10 * measure.Foot}, {"the whole square mile", measure.Mile}} {
		drift.Width = floe.width
		push, err := drift.Push()
		if err != nil {
			log.Fatal(err)
		}
		fmt.Println(floe.name)
		fmt.Println("  wind:", span(push.Drive))
		fmt.Println("  the ice on the face bears:", span(push.Limit))
		check, err := push.Check("two lines", 8*measure.Kilonewton)
		if err != nil {
			log.Fatal(err)
		}
		word := "not ruled out"
		if check.Verdict() == measure.Short {
			word = "short"
		}
		fmt.Printf("  against %s: %s; %s\n", measure.Force.Format(check.Limit, measure.SI), word, check.Notes[0])
	}
	// Output:
	// a strip as wide as the dock
	//   wind: 1.4 to 5.2 kN (0.3 to 1.2 kip)
	//   the ice on the face bears: 474 to 6194 kN (107 to 1392 kip)
	//   against 8000 N: not ruled out; governed by: wind and current
	// the whole square mile
	//   wind: 722 to 2769 kN (162 to 622 kip)
	//   the ice on the face bears: 474 to 6194 kN (107 to 1392 kip)
	//   against 8000 N: short; slack the lines, cut it free, or expect loss
}

// Forces on a drum and its four brackets for the frame's model.
func ExampleCover_Grip() {
	drum := action.Body{Length: 35 * measure.Inch, Breadth: 23 * measure.Inch}
	g, err := action.Cover{Thickness: 6 * measure.Inch}.Grip(drum, 0.5*measure.Inch, 4)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println("drum, up:", span(g.Up))
	fmt.Println("drum, any way level:", span(g.Sideways))
	fmt.Println("bracket, up:", span(g.BracketUp))
	fmt.Println("bracket, level:", span(g.BracketSideways))
	// Output:
	// drum, up: 5.2 to 14 kN (1.2 to 3.1 kip)
	// drum, any way level: 0.0 to 386 kN (0.0 to 87 kip)
	// bracket, up: 1.3 to 7.0 kN (0.3 to 1.6 kip)
	// bracket, level: 0.0 to 193 kN (0.0 to 43 kip)
}

// What has been published about the thrust of warming ice, side by side.
func ExampleThrusts() {
	for _, t := range action.Thrusts() {
		fmt.Printf("%3.0f to %3.0f kN/m  %s, %s (%s)\n", t.Low/1e3, t.High/1e3, t.Of, t.Applies, t.Source.Status)
	}
	// Output:
	// 100 to 150 kN/m  design, Norway, long rigid walls of dams (read)
	// 150 to 220 kN/m  design, Canada and USA, long rigid walls of dams (read)
	// 250 to 250 kN/m  greatest in the laboratory, Sweden, laboratory (read)
	//  50 to 250 kN/m  guidelines in use, concrete dams (read)
	// 146 to 146 kN/m  dam study, Colorado, long rigid walls of dams (read)
	// 188 to 378 kN/m  once in 100 years, three Canadian stations, walls of generating stations (read)
	//   0 to  85 kN/m  greatest measured, small regulated reservoir, reservoir whose level varies by 0.35 m (read)
	//   0 to 146 kN/m  design pressure, USA, dams, ice not over 2 ft (from memory)
	// 146 to 219 kN/m  design, rigid structures, USA, rigid structures (from memory)
	//  73 to  73 kN/m  design, gates, USA, gates and other yielding faces (from memory)
	//  50 to 200 kN/m  design, Sweden, south to north, dams (from memory)
}

// Bond on a smooth pile of a known material, and on a drum of one that nobody
// gave a figure for.
func ExampleAdhesion() {
	bond, err := action.Adhesion("wood", 8*measure.Inch, 12*measure.Inch)
	if err != nil {
		log.Fatal(err)
	}
	lift, err := action.Cover{Thickness: 12 * measure.Inch}.Uplift(action.Body{Length: 8 * measure.Inch, Smooth: true, Bond: bond}, 4*measure.Inch)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println("pile:", span(lift.Force), lift.Force.Name)
	_, err = action.Adhesion("polyethylene", 23*measure.Inch, 12*measure.Inch)
	fmt.Println(err)
	// Output:
	// pile: 19 to 82 kN (4.4 to 18 kip) bond of the ice
	// bond to polyethylene: not known: P. Oksanen (VTT, 1982) measured it; his figures were not seen; want a measured strength
}

// What to do in autumn.
func ExampleAutumn() {
	for _, a := range action.Autumn()[:3] {
		fmt.Printf("%s (%s, %s)\n", a.Text, a.Publisher, a.Status)
	}
	// Output:
	// take the dock out before freeze-up: public docks are, to spare the damage (Minnesota Department of Natural Resources, notice of 2008, as reported, as quoted)
	// let hinges, pins and lines follow the water, and give the lines more length as it falls (Ameren Missouri, December 2022, by KOMU, as quoted)
	// a frozen-in dock is damaged when the water falls from under the ice and it collapses (Ameren Missouri, December 2022, by KOMU, as quoted)
}
