// Package fasten has the fasteners, joints and hardware of a wooden dock frame:
// bolts, lag screws, wood screws and nails, brackets, the drum's tie, hinge pins,
// the list of hardware to buy and the rules against rust.
//
// # Model
//
// A [Joint] is one fastener or a group of them through a main and a side [Piece]
// of wood, steel or concrete. [Joint.Yield] gives the reference lateral design
// value of one [Fastener] by the yield limit equations of the National Design
// Specification for Wood Construction, edition 2018, allowable stress design:
// every yield mode, and which governs. [Joint.Lateral] and [Joint.Pull] apply
// every factor and say why; [Joint.Check] compares them with a [Demand], alone
// and combined, together with distances to ends and edges, tearing of the wood
// around the group, and shear near the member's end.
//
// Diameters are used where each belongs: dowel bearing at the nominal diameter
// always; the yield equations at the root of threads for lag and wood screws,
// and for a bolt unless its threads are shown to keep out.
//
// # Assumptions
//
// Zero values are the cautious ones: wet wood, load of permanent duration, threads in
// the shear plane, salt air. A distance to an end or edge, a printed allowable,
// a coating, or the strength of the lip a drum is tied to that is not given is
// never guessed: the check gives no answer.
//
// # Limits
//
// Equations were proved on several hundred cells of the printed tables; the
// pages themselves were read only in part, and each source says so. Editions
// before 2001 reduce lag screws otherwise: do not mix. Screws sold by number
// for decks are taken for wood screws of the standard; a maker's own report
// replaces that. The ledger tables of building codes rest on tests at a dry house
// wall (some 375 lbf a 1/2 in lag screw, where the standard gives 204 dry and 143
// wet): a dock goes by the standard. Split rings, glue, metal plates, fire and impact are not
// covered; no maker's figure is in the package. Nothing here replaces local
// codes, permits and licensed practice.
//
// # Sources
//
// National Design Specification for Wood Construction, chapters 11 and 12, and
// Technical Report 12, American Wood Council; the Specification for Structural Steel
// Buildings, AISC 1989, for pins. Each value and factor names its place and how well
// it was read.
//
// # Example
//
//	size, err := lumber.Size("2x8")
//	if err != nil {
//		return err
//	}
//	pine, err := lumber.Lookup("Southern Pine", "No.2", size)
//	if err != nil {
//		return err
//	}
//	bolt, err := fasten.Lookup("1/2 x 4 bolt")
//	if err != nil {
//		return err
//	}
//	wood := fasten.Piece{Grade: pine, Thickness: size.Width, Width: size.Depth}
//	yield, err := fasten.Joint{Fastener: bolt, Main: wood, Side: wood}.Yield()
//	if err != nil {
//		return err
//	}
//	fmt.Println(measure.Force.Format(yield.Z, measure.US), "a bolt, mode", yield.Governing)
package fasten
