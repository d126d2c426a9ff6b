package hostile

import (
	"math"
	"reflect"
	"sync"
	"time"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
	"example.org/floewright/float/moor"
	"example.org/floewright/frame"
	"example.org/floewright/frame/dock"
	"example.org/floewright/frame/layout"
	"example.org/floewright/frame/plan"
	"example.org/floewright/frame/rack"
	"example.org/floewright/ice"
	"example.org/floewright/ice/action"
	"example.org/floewright/ice/season"
	"example.org/floewright/lumber"
	"example.org/floewright/lumber/fasten"
	"example.org/floewright/lumber/measure"
)

// must ends the tests where a sound value cannot be made.
func must[T any](x T, err error) T {
	if err != nil {
		panic(err)
	}
	return x
}

const in, ft = measure.Inch, measure.Foot

// The docks, sheets and joints below are invented.

func raft() *float.Platform {
	drum := float.Cylinder{Diameter: 0.58, Length: 0.88}
	// Like nothing else and askew, so that no term is nothing by symmetry.
	p := &float.Platform{Density: 999.7, Weights: []float.Weight{{Mass: 500, At: r3.Vec{X: 0.11, Y: -0.07, Z: 0.1}}, {Mass: 30, At: r3.Vec{X: -1.3, Y: 0.9, Z: 0.4}}}}
	for _, x := range []float64{-2, 2} {
		for _, y := range []float64{-1.2, 1.2} {
			p.Units = append(p.Units, float.Unit{Body: drum, At: r3.Vec{X: x, Y: y, Z: -0.29}, Heading: 0.2*x - 0.3*y, Mass: 18 + x})
			p.Corners = append(p.Corners, r3.Vec{X: x * 1.2, Y: x * y * 0.6, Z: 0.2})
		}
	}
	p.Units[1].Body = float.Block{Length: 0.9, Width: 0.6, Height: 0.5}
	return p
}

func mooring() *moor.Mooring {
	chain, rope := must(moor.Lookup("chain grade 30", "3/8 in")), must(moor.Lookup("nylon 3-strand", "3/4 in"))
	m := &moor.Mooring{}
	for _, c := range [4][2]float64{{1, 1}, {-1, 1}, {-1, -1}, {1, -1}} {
		m.Ties = append(m.Ties, moor.Tie{
			Name: "line", Line: moor.Line{Pieces: []moor.Piece{
				{Gear: chain, Length: 7.5, Weight: 17}, {Gear: rope, Length: 4.5, Weight: 0.3, Stretch: 1.1e5},
			}},
			At: [2]float64{2.4 * c[0], 1.2 * c[1]}, Height: 0.3,
			Foot: [2]float64{10.2 * c[0], 9 * c[1]}, FootZ: -3.6,
			Fitting: rope, Links: []moor.Gear{chain}, Ground: moor.Rated{Name: "screw", Hold: 9000, Steepest: 0.35},
		})
	}
	m.Posts = []moor.Post{{Name: "pile", At: [2]float64{0, 1.2}, Stiffness: 1e4, Play: 0.05, Fitting: rope, Hold: chain, Ground: moor.Rated{Name: "bed", Hold: 9000, Steepest: 0.35}}}
	return m
}

func joint() fasten.Joint {
	rim, post := must(lumber.Size("2x8")), must(lumber.Size("4x4"))
	return fasten.Joint{
		Fastener: must(fasten.Lookup("1/2 x 7 bolt")),
		Main:     fasten.Piece{Grade: must(lumber.Lookup("Southern Pine", "No.2", post)), Thickness: post.Width, Width: post.Depth, Away: true, End: 3 * in, Edge: 1.75 * in},
		Side: fasten.Piece{
			Grade: must(lumber.Lookup("Southern Pine", "No.2", rim)), Thickness: rim.Width, Width: rim.Depth,
			Angle: math.Pi / 2, End: 2.25 * in, Edge: 2.25 * in,
		},
		PerRow: 2, Spacing: 3 * in, Service: fasten.Service{Seasoned: true, Temperature: 20},
	}
}

func grillage() *frame.Grillage {
	g := &frame.Grillage{Nodes: [][2]float64{{0, 0}, {2.4, 0}, {0, 2.4}, {2.4, 2.4}}, Names: []string{"a", "b", "c", "d"}}
	for _, ends := range [][2]int{{0, 1}, {2, 3}, {0, 2}, {1, 3}} {
		g.Members = append(g.Members, frame.Member{I: ends[0], J: ends[1], EI: 2e5, GJ: 2e3, GA: 1e7, Loads: []frame.Load{frame.Uniform(0, 2.4, 250)}})
	}
	for n := range g.Nodes {
		g.Seats = append(g.Seats, frame.Seat{Nodes: []int{n}, Support: frame.OneWay(4000), Heights: [2]float64{-0.3, -0.4}})
	}
	g.Forces = [][3]float64{{300, 0, 0}, {}, {}, {}}
	g.Weights = []frame.Weight{{Node: 0, Force: 300, Height: 0.1}}
	return g
}

func panel() *rack.Frame {
	f := &rack.Frame{Nodes: [][2]float64{{0, 0}, {3, 0}, {3, 2}, {0, 2}}}
	for _, n := range [][]int{{0, 1}, {1, 2}, {2, 3}, {3, 0}} {
		f.Members = append(f.Members, rack.Member{Nodes: n, EA: 2e7, EI: 1e4, GA: 1e6, Ends: [2]rack.End{rack.Rigid(), rack.Rigid()}, Loads: []rack.Load{rack.Uniform(0, 1, 10, 20)}})
	}
	f.Holds = []rack.Hold{{Node: 0, Along: 1e5, Across: 1e5, Turn: 1e4}, {Node: 1, Across: math.Inf(1)}}
	f.Forces = []rack.Force{{Node: 2, X: 900, Y: 10, Couple: 5}}
	board := rack.Board{From: [2]float64{1, 0}, To: [2]float64{1, 2}, EA: 1e7, EI: 1e3}
	f.Boards = []rack.Board{must(f.Lay(board, 0.1, 1.5e6))}
	return f
}

func drawn() layout.Drawing {
	s := lumber.Section{Width: 0.038, Depth: 0.184}
	pieces := must(layout.Rectangle{Length: 1.638, Width: 2, Across: true, Marks: []float64{0, 0.5, 1, 1.6}, Joist: s, Rim: s}.Pieces())
	return layout.Drawing{
		Pieces: pieces,
		Drums:  []layout.Drum{{Name: "drum", At: layout.Point{X: 0.269, Y: 1}, Diameter: 0.58, Length: 0.9}},
		Decks:  []layout.Deck{{Name: "deck", Max: layout.Point{X: 1.6, Y: 2}, Along: true, Face: 0.14, Thickness: 0.038, Gap: 0.006}},
		Bolts:  []layout.Bolt{{Name: "bolt", At: layout.Point{X: 0.1, Y: 0.02}, Height: 0.1, Tail: layout.Point{Y: 1}}},
	}
}

func cover() ice.Sheet {
	s := ice.Sheet{
		Place: "invented bay", Water: ice.Lake, Season: ice.Winter, Age: 7200,
		Cracks: ice.NoCracks, Wet: ice.NotFound, Inlets: ice.NotFound, Changed: ice.NotFound,
		Depth: 4, SnowDensity: 250,
	}
	for i, at := range [][2]float64{{-4, 3}, {4, 3}, {4, -3}, {-4, -3}, {0, 0}, {0, -20}} {
		spot := []ice.Spot{ice.PadCorner, ice.PadCorner, ice.PadCorner, ice.PadCorner, ice.PadMiddle, ice.Walk}[i]
		s.Holes = append(s.Holes, ice.Hole{Spot: spot, X: at[0], Y: at[1], Clear: 0.30, Water: 0.02, Snow: 0.05, Looked: true})
	}
	for range 5 {
		s.Air = append(s.Air, ice.Air{High: -5, Low: -15})
	}
	return s
}

// made are values that reflection cannot invent, by type, made once.
var made = sync.OnceValue(func() map[reflect.Type]any {
	size := must(lumber.Size("2x8"))
	grade := must(lumber.Lookup("Southern Pine", "No.2", size))
	plate := ice.Plate{Thickness: 0.3, E: 1e9, Nu: 0.33}
	patches := []ice.Patch{{A: 1.2, B: 3.6, Force: 6000}, {X: 1.5, A: 0.15, Force: 1000}}
	p, m, g, f, d := raft(), mooring(), grillage(), panel(), drawn()
	state := must(p.Settle())
	beam := &frame.Beam{
		Length: 6, EI: 1e5, GA: 1e7, Rests: []frame.Rest{{At: 0}, {At: 3, Support: frame.Spring(1e6)}, {At: 6}},
		Loads: []frame.Load{frame.Uniform(0, 6, 800), frame.Point(1, 500)},
	}
	weather := moor.Weather{Wind: moor.Wind{Speed: 11}}
	gear := must(moor.Lookup("shackle", "1/2 in"))
	deadWeight := moor.DeadWeight{Mass: 900, Density: 2400, Water: 1000, Friction: 0.4, Design: measure.Factor{Value: 1.5}}
	stand := ice.Stand{Loads: patches, Stay: 21 * 86400, Soft: ice.Creep{Temperature: -2, Grain: 0.003, E: 9e9}, Stiff: ice.Creep{Temperature: -10, Grain: 0.01, E: 9e9}}
	icy := action.Cover{Thickness: 0.3}
	level, push := must(icy.Uplift(action.Body{Length: 0.88, Breadth: 0.58}, 0.05)), action.Drift{
		Wind: 13, Reach: 1600, Touching: true, Width: 3, Face: action.Face{Width: 3}, Cover: action.Cover{Thickness: 0.4},
	}
	side := must(moor.Afloat(0, 0.3, 6, 1.2, 1.2, 2.4))
	cuts := must(lumber.Deck{Board: "5/4x6", Length: 3, Width: 2, Joists: []float64{0, 0.4, 0.8, 1.2, 1.6, 2, 2.4, 2.8, 3}, Face: 0.14, Gap: 0.005, Least: 0.05, Longest: 4.8}.Rows())
	planned := must(plan.Read("demo.json", demo(0)))
	out := map[reflect.Type]any{}
	for _, x := range []any{
		measure.Source{Title: "An invented source", Status: measure.Read},
		measure.Range{Lo: 0, Hi: 10},
		time.Date(2027, 1, 15, 0, 0, 0, 0, time.UTC),

		*p, p.Units[0], state, float.Body(p.Units[0].Body),
		float.Cylinder{Diameter: 0.58, Length: 0.88},
		float.Drums()[0],
		float.Crowd{People: 3, Each: 84, Height: 1, Inset: 0.3},
		float.Deck{Depth: 0.2, Drawn: 0.2, Walk: 0.9},
		float.Seal{Celsius: 20, Atmosphere: 101325},
		float.Ladder{At: r3.Vec{X: 2}, Out: 0.3, Mass: 90, Height: 0.9},
		float.Doubt{Mass: 0.1, Place: 0.02, Volume: 0.02, Each: 0.01, Aboard: 0.1},
		float.Survey{Plan: p, Freeboards: []float.Figure{{Value: 0.3, Within: 0.01}, {Value: 0.3, Within: 0.01}, {Value: 0.3, Within: 0.01}, {Value: 0.3, Within: 0.01}}, Doubt: float.Doubt{Mass: 0.1, Place: 0.02}},
		float.Water{Celsius: 10, Salinity: 0.1},
		float.Wave{Height: 0.2, Length: 40},
		float.Demand{Load: must(float.Rules(float.Deck{Depth: 0.2, Drawn: 0.2, Walk: 0.9})), Crowd: float.Crowd{People: 1, Each: 84, Height: 1, Inset: 0.3}, Tries: 50},
		must(p.Motion()), must(p.Righting(0, []float64{0, 0.1, 0.2, 0.3})),

		*m, m.Ties[0].Line, m.Ties[0], must(m.Ties[0].Line.At(7, 3, moor.Hang{})), must(m.Rest(0, moor.Load{X: 100, Y: 300, Turn: 20})), gear,
		moor.Ground(moor.Rated{Name: "screw", Hold: 9000, Steepest: 0.35}), deadWeight, moor.Storm(weather.Load), weather,
		moor.Wind{Speed: 11},
		moor.Fetch{Wind: 11, Length: 800, Depth: 4},
		moor.Sea{Height: 0.3, Period: 2},
		moor.Ramp{Width: 1, Length: 5, Shore: 1.5},
		moor.Cleat{Height: 0.05, Base: 0.1, Bolts: 2},
		moor.Haul{Mass: 900, Slope: 0.1, Friction: 0.4, Parts: 1, Line: gear, Anchor: deadWeight},
		side,
		moor.Wake{Boat: 3, Height: 0.2, Distance: 30},
		moor.Hinge{Width: 1, Pins: 2, Diameter: 0.02, Plate: 0.01, Strength: gear},
		must(m.Survey([]float64{0}, weather.Load, 8)),
		moor.Snow{Ground: 2000},
		moor.Current{Speed: 0.5, Density: 1000},
		moor.Impact{Mass: 2000, Speed: 0.5},

		*beam, *g, *must(beam.Solve()), *must(g.Solve()), *must(beam.MomentInfluence(1.5)), frame.Spring(1e5),
		frame.Load{From: 0, To: 1, Q: 100},
		*f, *must(f.Solve()),
		rack.Member{Nodes: []int{0, 1}, EA: 1e7, EI: 1e4},
		f.Boards[0],
		d, *must(layout.New(d)),
		layout.Rectangle{Length: 1.638, Width: 2, Across: true, Marks: []float64{0, 0.5, 1, 1.6}, Joist: size, Rim: size},
		layout.Frame{A: 3.665, B: 4.963, C: 3.663, D: 4.963, P: 6.175, Q: 6.162},
		layout.Strength{Moment: 300, Screw: 600, Screws: 1},
		[]layout.Support{{At: layout.Point{}}, {At: layout.Point{X: 2}}, {At: layout.Point{X: 2, Y: 2}}, {At: layout.Point{Y: 2}, Height: 0.01}},

		*planned, *must(dock.Build(planned)),

		plate, *must(plate.Bowl(patches)), patches, patches[0],
		ice.Cover{Ice: 0.3, Snow: 0.05, IceDensity: 917, SnowDensity: 250},
		ice.Creep{Temperature: -5, Grain: 0.003, E: 9e9},
		ice.Crossing{Mass: 450, People: 3, Others: []ice.Other{{Mass: 90, People: 1, Distance: 10}}},
		cover(), stand,
		ice.Pad{A: 4, B: 6, Snow: 500, Bank: 300},
		ice.Wave{Plate: plate, Depth: 4},
		ice.Haul{Load: ice.Crossing{Mass: 450, People: 3}, Speed: 1},
		ice.Gauge{{Age: 86400 * 3, Freeboard: 0.05}, {Age: 86400 * 2, Freeboard: 0.04}, {Age: 86400, Freeboard: 0.03}, {Freeboard: 0.02}},
		ice.Hole{Clear: 0.3, White: 0.05, Hard: true, Looked: true},
		ice.Classes()[0], ice.Tables()[0], ice.Thaws()[0],
		cover,
		action.Body{Length: 0.88, Breadth: 0.58},
		level, push, must(push.Push()), action.Thrusts()[0],
		action.Span{},
		icy,

		lake, season.Default(), season.Ashton(), *must(season.New(lake, season.Default())), winter(), winter()[0], start(),

		size, grade,
		lumber.Member{Section: size, Grade: grade, Length: 3, Unbraced: 0.4, Smooth: true, Temperature: 20, Plies: 1},
		lumber.Demand{Moment: 900, Shear: 1500, Reaction: 1500, Bearing: 0.09, Span: 3, Long: 0.001, Short: 0.004},
		lumber.Notch{Depth: 0.03},
		lumber.Deck{Board: "5/4x6", Length: 3, Width: 2, Joists: []float64{0, 0.5, 1, 1.5, 2, 2.5, 3}, Face: 0.14, Gap: 0.005, Least: 0.05, Longest: 4.8},
		*cuts,
		lumber.Trees()[0], must(lumber.ReadStamp("No.2 S-DRY SYP")),
		lumber.Board{Section: lumber.Section{Width: 0.14, Depth: 0.025}, Rating: 0.4},

		joint(), joint().Fastener, joint().Main,
		fasten.Demand{Lateral: 1500},
		fasten.Service{Seasoned: true, Temperature: 20},
		fasten.Exposure{Treatment: "MCA", Fresh: true, Drains: true},
		[]fasten.Place{{Name: "corner", Joint: joint(), Alike: 4, Finish: "hot-dip galvanized"}},
		fasten.Pin{Diameter: 0.02, Lug: 0.01, Leaf: 0.01, Yield: 250e6},
	} {
		v := reflect.ValueOf(x)
		if v.Kind() == reflect.Pointer && v.Type() != reflect.TypeFor[*measure.Source]() {
			v = v.Elem()
		}
		out[v.Type()] = v.Interface()
	}
	out[reflect.TypeFor[float.Rule]()] = must(float.Rules(float.Deck{Depth: 0.2, Drawn: 0.2, Walk: 0.9}))[0]
	out[reflect.TypeFor[float.Body]()] = float.Body(float.Cylinder{Diameter: 0.58, Length: 0.88})
	out[reflect.TypeFor[moor.Ground]()] = moor.Ground(moor.Rated{Name: "screw", Hold: 9000, Steepest: 0.35})
	return out
})
