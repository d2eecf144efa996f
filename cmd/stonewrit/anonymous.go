package main

import "stonewrit/grading/stone"

// anonymous is a stone without what tells of its client, owners, insurers and
// dealers, and of where it is kept.
func anonymous(s *stone.Stone) *stone.Stone {
	bare := *s
	bare.Client, bare.Location, bare.Place = nil, "", ""
	bare.Stock, bare.Owned, bare.Insured, bare.Valued = nil, nil, nil, nil
	bare.Spoken, bare.Court, bare.Oath, bare.Gift = nil, nil, "", nil
	if s.History != nil {
		history := *s.History
		history.Provenance = ""
		bare.History = &history
	}
	return &bare
}
