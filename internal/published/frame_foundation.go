package published

func frameFoundationChecks() ([]Check, error) { return nil, nil }
