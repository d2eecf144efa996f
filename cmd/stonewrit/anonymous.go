package main

import (
	"reflect"
	"strings"
	"unicode/utf8"

	"stonewrit/grading/stone"
)

// withoutPeople is a record whose stone, or piece with its stones, is anonymous.
func withoutPeople(rec *record) *record {
	bare := *rec
	bare.stone = anonymous(rec.stone)
	if rec.piece != nil {
		piece := *rec.piece
		piece.Assignment, piece.Account = bare.stone.Assignment, bare.stone.Account
		bare.piece = &piece
	}
	bare.set = nil
	for _, one := range rec.set {
		bare.set = append(bare.set, withoutPeople(one))
	}
	return &bare
}

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

// ownStock is what stands for a client where there is none.
const ownStock = "own stock"

// shortest is the length in letters from which a word is taken for a name.
const shortest = 4

// peopleOf are the words that must not stand in an anonymous document: those of
// the client, on one line each.
func peopleOf(s *stone.Stone) []string {
	if s.Client == nil || strings.EqualFold(s.Client.Name, ownStock) {
		return nil
	}
	var list []string
	for _, text := range []string{s.Client.Name, s.Client.Address, s.Client.Contact} {
		if text = strings.Join(strings.Fields(text), " "); utf8.RuneCountInString(text) >= shortest {
			list = append(list, text)
		}
	}
	return list
}

// lastName is the last word of the client's name, or "".
func lastName(s *stone.Stone) string {
	if len(peopleOf(s)) == 0 {
		return ""
	}
	words := strings.Fields(s.Client.Name)
	if len(words) < 2 || utf8.RuneCountInString(words[len(words)-1]) < shortest {
		return ""
	}
	return words[len(words)-1]
}

// textOf is every text in a value, in order, without what lies between.
func textOf(value any) string {
	var b strings.Builder
	gather(&b, reflect.ValueOf(value))
	return b.String()
}

func gather(b *strings.Builder, v reflect.Value) {
	switch v.Kind() {
	case reflect.String:
		b.WriteString(v.String())
	case reflect.Pointer, reflect.Interface:
		gather(b, v.Elem())
	case reflect.Struct:
		for i := range v.NumField() {
			gather(b, v.Field(i))
		}
	case reflect.Slice, reflect.Array:
		if v.Type().Elem().Kind() == reflect.Uint8 {
			return // a picture
		}
		for i := range v.Len() {
			gather(b, v.Index(i))
		}
	case reflect.Map:
		for _, k := range v.MapKeys() {
			gather(b, v.MapIndex(k))
		}
	}
}
