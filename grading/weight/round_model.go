package weight

type roundModel struct{}

func readRoundModel(src []byte) (roundModel, error) { return roundModel{}, nil }
