package compose

import (
	"coldfloor/internal/units"
	"coldfloor/sessions"
)

// Quality is what a player may ask to train.
type Quality string

// The qualities, in the order in which a session trains them: jumps first,
// slow strength after.
const (
	Vertical   Quality = "vertical"
	Horizontal Quality = "horizontal"
	Lateral    Quality = "lateral"
	Strength   Quality = "strength"
)

// Qualities returns them all.
func Qualities() []Quality { return []Quality{Vertical, Horizontal, Lateral, Strength} }

// Parts of a session that nobody asks for.
const (
	warmUp   Quality = "warm-up"
	trunk    Quality = "trunk"
	coolDown Quality = "cool-down"
)

// Floors.
var (
	spot = sessions.Floor{Along: 1 * units.Metre, Across: 1 * units.Metre}
	mat  = sessions.Floor{Along: 2 * units.Metre, Across: 1 * units.Metre}
	step = sessions.Floor{Along: 1500, Across: 1000}
	lane = sessions.Floor{Along: 3 * units.Metre, Across: 1 * units.Metre}
)

// exercises are what a draft picks from, of each quality the best first. The
// last two of each fit the smallest room and the lowest ceiling. Fast work
// that is not springy has its reset in the rep, which lasts 3 s or more.
var exercises = map[Quality][]exercise{
	Vertical: {
		ex("Squat jump", "Hands on the hips, Explode, Soft landing",
			"From a quarter squat straight up, hands on the hips. Set yourself again before each jump.",
			"Fast rise on to the toes", spot).jumps(40).easierContacts(0).every(4000).dosed(reps, 3, 4, 5),
		ex("Pogo hops", "Stiff ankles, Short on the floor",
			"On the balls of the feet, knees almost straight. The floor is hot.",
			"Run on the spot", spot).jumps(25).easierContacts(1).every(600).dosed(reps, 6, 8, 8),
		ex("Fast rise on to the toes", "Ankles like springs, Stand tall at the top",
			"From flat feet on to the toes as fast as you can, wait, lower slowly.",
			"Hold on to a door frame", spot).every(3000).dosed(reps, 5, 6, 6),
		ex("Fast half squat", "Drop and stop, Drive up",
			"Sink quickly into a half squat, stop dead, drive up without leaving the floor. Stand still before the next.",
			"A shallower squat", spot).every(3500).dosed(reps, 4, 5, 6),
	},
	Horizontal: {
		ex("Standing broad jump", "Arms back, Throw the floor away, Land quiet",
			"Jump forwards about three quarters of your best, land on both feet and hold. Turn round if the floor ends.",
			"Broad jump half as far", lane).jumps(40).easierContacts(1).every(6000).along(1500).dosed(reps, 3, 3, 4),
		ex("Falling start", "Lean until you must step, Push the floor back",
			"Lean forward like a board and catch yourself with one explosive long step. Walk back. Change the leg each time.",
			"A smaller lean", mat).every(5000).dosed(reps, 3, 4, 4),
		ex("Wall drive", "Hips in line, Knee up fast",
			"Hands on the wall, body leaning like a board. Drive one knee up as fast as you can, set it down, find the line again. The same leg until you switch sides.",
			"A slower knee", spot).every(3000).swapped().dosed(perSide, 3, 4, 4),
		ex("Fast hip hinge", "Hips back, Snap tall",
			"Push the hips back, flat back, and snap up to standing as if to throw the floor away. Stand still before the next.",
			"Slower and smaller", spot).every(3500).dosed(reps, 5, 6, 6),
	},
	Lateral: {
		ex("Skater bound", "Push hard, Stick the landing",
			"Bound sideways from one foot to the other and hold each landing until you are still.",
			"Smaller bound on to both feet", sessions.Floor{Along: 2500, Across: 1000}).jumps(25).easierContacts(1).every(3000).inTurn().since(sessions.Intermediate).dosed(perSide, 3, 3, 4),
		ex("Side hop and hold", "Land soft, Knee over the foot",
			"A small hop sideways with both feet, hold for a breath. The next one goes back.",
			"Side step and hold", spot).jumps(20).easierContacts(0).every(3000).dosed(reps, 6, 6, 8),
		ex("Side lunge, fast out", "Sit into the hip, Push away from the floor",
			"A step to the side, sink into that hip, push back to standing in one go.",
			"A shorter step", step).every(3000).inTurn().dosed(perSide, 3, 4, 5),
		ex("Side-to-side push", "Heavy feet, Quick knees",
			"In a wide ready stance shift from one foot to the other as if to leave for the shuttle, the feet staying down, and settle before the next.",
			"A narrower stance", spot).every(3000).inTurn().dosed(perSide, 4, 5, 5),
		ex("Fast step and stick", "One quick step, Freeze",
			"One quick small step to the side, freeze on it, step back.",
			"Slower", spot).every(3000).inTurn().dosed(perSide, 3, 4, 4),
	},
	Strength: {
		ex("Split squat", "Front heel heavy, Chest over the knee",
			"One foot in front, one behind. Lower straight down for three seconds, wait, drive up.",
			"Hold on to a door frame", step).tempo(3, 1, 1).swapped().dosed(perSide, 5, 6, 7),
		ex("Push-up", "Body like a board, Elbows close",
			"Hands under the shoulders. Lower until the chest is a fist above the floor, push up in one piece.",
			"Hands on a stair or a table that cannot slip", mat).tempo(2, 0, 1).dosed(reps, 5, 8, 10),
		ex("Slow squat", "Heels down, Knees over the feet",
			"Three seconds down, one at the bottom, and up.",
			"On to a chair", spot).tempo(3, 1, 1).dosed(reps, 6, 8, 10),
		ex("Heel raise on one leg", "All the way up, All the way down",
			"Fingertips on the wall. Up on the toes, wait, lower for three seconds.",
			"Both legs", spot).tempo(3, 0, 1).swapped().dosed(perSide, 6, 8, 10),
	},
}

// frame are the exercises of the parts that nobody asks for.
var frame = map[Quality][]exercise{
	trunk: {
		ex("Side plank", "Hips high, Long neck",
			"On one elbow, a straight line from head to heels.",
			"Rest on the knees", mat).swapped().dosed(secondsPerSide, 15, 20, 30),
		ex("Dead bug", "Back stays on the floor, Breathe out as you reach",
			"On your back, arms up, knees above the hips. Stretch one arm and the opposite leg away, come back, change.",
			"Only the legs move", mat).every(4000).inTurn().dosed(perSide, 4, 5, 6),
		ex("Knee hold on one leg", "Stand tall, Ribs down",
			"Stand on one leg, the other knee at the height of the hip, press both hands against it.",
			"Fingertips on the wall", spot).swapped().dosed(secondsPerSide, 15, 20, 25),
		ex("Press against the wall", "Ribs down, Breathe",
			"Both palms against a wall at the height of the chest, lean in and hold the body like a board.",
			"Stand closer", spot).dosed(seconds, 20, 25, 30),
	},
	warmUp: {
		ex("Brisk march on the spot", "Swing the arms, Knees a little higher", "Until you are warm and can still talk.", "Walk slowly", spot).dosed(seconds, 48, 48, 48),
		ex("Side steps in a ready stance", "Stay low, Feet never cross", "Two small steps to the left, two to the right, as quiet as you can.", "Stand taller", spot).dosed(seconds, 48, 48, 48),
		ex("Leg swings", "Tall, Loose hip", "A hand on the wall, swing one leg forwards and backwards. Change legs half-way.", "Smaller swings", spot).dosed(seconds, 48, 48, 48),
		ex("Slow half squats", "Heels down, Look ahead", "Down and up without hurry, each a little deeper.", "Hold on to a door frame", spot).dosed(seconds, 48, 48, 48),
		ex("Elbow circles", "Big and slow, Ribs stay down", "Hands on the shoulders, large circles with the elbows. Change direction half-way.", "Smaller circles", spot).dosed(seconds, 48, 48, 48),
		ex("Quick heel raises", "Spring up, Ankles stiff", "Fingertips on the wall. Up on the toes fast, down slowly.", "Slower", spot).dosed(seconds, 48, 48, 48),
	},
	coolDown: {
		ex("Calf stretch at the wall", "Heel down, Long breath out", "Lean into the wall, one leg back and straight.", "A shorter step", spot).dosed(secondsPerSide, 30, 30, 30),
		ex("Front thigh stretch", "Squeeze the glutes, Stand tall", "Hold one foot behind you, the knees side by side, a hand on the wall.", "Only lift the heel", spot).dosed(secondsPerSide, 30, 30, 30),
		ex("Hip stretch in a lunge", "Long back leg, Do not arch", "A long step, the back knee low, and shift forward until the front of the back hip pulls.", "A shorter step", step).dosed(secondsPerSide, 40, 40, 40),
		ex("Standing side bend", "Both feet heavy, Breathe into the ribs", "One hand high on the wall, lean away from it.", "A smaller lean", spot).dosed(secondsPerSide, 30, 30, 30),
		ex("Long breaths", "In for four, Out for six", "Stand or sit, a hand on the belly, and let the breath get long.", "Lie down", spot).dosed(seconds, 60, 60, 60),
	},
}
