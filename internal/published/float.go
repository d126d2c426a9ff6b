package published

// floatSets lists the checks of package float by subject.
var floatSets = []func() ([]Check, error){
	floatSegmentChecks,
	floatCylinderChecks,
	floatRestChecks,
	floatWaterChecks,
	floatDrumChecks,
	floatSealChecks,
	floatMotionChecks,
	floatCriteriaChecks,
	floatWorkedChecks,
	floatMoreChecks,
}

func floatChecks() ([]Check, error) {
	var all []Check
	for _, set := range floatSets {
		checks, err := set()
		if err != nil {
			return nil, err
		}
		all = append(all, checks...)
	}
	return all, nil
}
