package plan

import "example.org/floewright/lumber/measure"

// A Shop is the saw, the bill and what goes with the lumber to the lake.
type Shop struct {
	Kerf, Trim Quantity
	Tax        Quantity // on goods and delivery
	Delivery   Quantity // in the plan's currency
	Budget     Quantity // in the plan's currency
	Items      []Item
	Coatings   []Coating

	Carriers Count    // people who carry
	Sled     Quantity // what it takes at a time
	Drag     Quantity // pull to draw the sled on the level, as a share of its weight
}

// An Item is anything but lumber and coatings that is bought.
type Item struct {
	Name  Name
	Part  Name // "hardware" or "other"
	Need  Count
	Have  Count
	Lot   Count // sold in bundles or boxes of so many
	Price Quantity
	Mass  Quantity // of one
}

// A Coating is a can of preservative, stain or paint, as its label has it.
type Coating struct {
	Name     Name
	On       Name // "cut ends", "deck" or "all faces"
	Coats    Count
	Can      Quantity // volume of one can
	Covers   Quantity // area that one can covers once
	Have     Quantity // volume in hand
	Price    Quantity // of one can
	Moisture Quantity // most water in the wood
	Air      Quantity // lowest air temperature
	Dry      Quantity // time without rain or frost afterwards
}

var shopFields = []field[Shop]{
	plausible(quantity("kerf", measure.Length, "0 mm", "10 mm", "1/8 in", "Width of a saw cut: try it in scrap.", func(s *Shop) *Quantity { return &s.Kerf }), "1/16 in", "1/4 in"),
	plausible(quantity("trim", measure.Length, "0 mm", "300 mm", "1/8 in", "What comes off each end of every board to square it, the cut included.", func(s *Shop) *Quantity { return &s.Trim }), "0 in", "1/2 in"),
	quantity("tax", measure.Percent, "0 %", "100 %", "", "Sales tax that comes on top of the prices, on delivery too. Prices with tax: \"0 %\".", func(s *Shop) *Quantity { return &s.Tax }),
	price("delivery", "Price of delivery; 0 if you fetch it.", func(s *Shop) *Quantity { return &s.Delivery }),
	price("budget", "What everything on the list may cost with tax and delivery.", func(s *Shop) *Quantity { return &s.Budget }),
	sections("items", "Hardware and other things to buy, but lumber and coatings.", itemFields, func(s *Shop) *[]Item { return &s.Items }),
	sections("coatings", "Preservative, stain or paint, as the cans' labels have it.", coatingFields, func(s *Shop) *[]Coating { return &s.Coatings }),
	count("carriers", 1, 50, "2", "People who carry the pieces to the lake.", func(s *Shop) *Count { return &s.Carriers }),
	quantity("sled_load", measure.Mass, "5 kg", "2000 kg", "", "What the sled takes at a time. Left out: everything is carried by hand.", func(s *Shop) *Quantity { return &s.Sled }),
	plausible(quantity("sled_friction", measure.Percent, "1 %", "200 %", "30 %", "Pull that draws the loaded sled on the level, by a spring scale, as a share of its weight.", func(s *Shop) *Quantity { return &s.Drag }), "10 %", "60 %"),
}

var itemFields = []field[Item]{
	required(word("name", "a text", "", "What it is, with its size.", func(i *Item) *Name { return &i.Name })),
	choice("part", "hardware", "Whether it is hardware of the frame, or another thing.", []string{"hardware", "other"}, func(i *Item) *Name { return &i.Part }),
	required(count("need", 1, 100000, "", "How many the job takes.", func(i *Item) *Count { return &i.Need })),
	count("have", 0, 100000, "0", "How many are in hand.", func(i *Item) *Count { return &i.Have }),
	count("lot", 1, 10000, "1", "How many are sold together: a box, a pack.", func(i *Item) *Count { return &i.Lot }),
	price("price", "Price of one lot.", func(i *Item) *Quantity { return &i.Price }),
	quantity("mass", measure.Mass, "0.0001 kg", "1000 kg", "", "Of one: weigh a box and count.", func(i *Item) *Quantity { return &i.Mass }),
}

var coatingFields = []field[Coating]{
	required(word("name", "a text", "", "What it is.", func(c *Coating) *Name { return &c.Name })),
	required(choice("on", "", "What it goes on: cut ends and ripped edges, the top of the deck, or all faces of all pieces.", []string{"cut ends", "deck", "all faces"}, func(c *Coating) *Name { return &c.On })),
	count("coats", 1, 6, "2", "Coats, by the label.", func(c *Coating) *Count { return &c.Coats }),
	quantity("can", measure.Volume, "0.05 L", "250 L", "", "Volume of one can.", func(c *Coating) *Quantity { return &c.Can }),
	quantity("covers", measure.Area, "0.1 m2", "10000 m2", "", "Area that one can covers once, by the label; take the low figure, for rough and dry wood drinks.", func(c *Coating) *Quantity { return &c.Covers }),
	quantity("have", measure.Volume, "0 L", "1000 L", "0 L", "Volume in hand.", func(c *Coating) *Quantity { return &c.Have }),
	price("price", "Price of one can.", func(c *Coating) *Quantity { return &c.Price }),
	quantity("wood_moisture", measure.Percent, "5 %", "100 %", "", "Most water in the wood when it is put on, by the label; by a pin meter in three boards.", func(c *Coating) *Quantity { return &c.Moisture }),
	quantity("air_at_least", measure.Temperature, "-20 C", "40 C", "", "Lowest air temperature while it goes on and dries, by the label.", func(c *Coating) *Quantity { return &c.Air }),
	quantity("dry_for", measure.Time, "0.5 h", "30 days", "", "Time without rain, dew or frost afterwards, by the label.", func(c *Coating) *Quantity { return &c.Dry }),
}
