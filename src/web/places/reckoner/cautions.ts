/** The cautions that laws name. Made from docs/safety.md by `npm run sources`: edit that file, not this one. */

export interface Caution {
  readonly title: string;
  readonly says: string;
  readonly points: readonly string[];
}

export const CAUTIONS: Readonly<Record<string, Caution>> = {
  electricity: {
    title: 'Electricity',
    says: 'Large lamps draw large currents for a long time.',
    points: [
      'Distribution, connection to a supply and work inside any enclosure belong to a qualified electrician, under the code that holds where you are. Ask who that is before the first lamp is switched on.',
      'Load circuits and cables within what their makers and the code permit for continuous use, not up to the figure at which a breaker trips. Uncoil cables under load: a coil heats up.',
      'Use residual-current protection where people, water and metal stands meet, and test it. Connectors stay off the floor, strain is taken off them, and damaged ones go out of use at once.',
      'Earth metal stands and rigs as the code asks. Discharge lamps and electronic supplies hold a charge after they are switched off.',
    ],
  },
  'liquids-near-power': {
    title: 'Liquids near power',
    says: 'Pours, splashes and wet floors beside mains.',
    points: [
      'Keep supplies, dimmers, connectors and multi-way blocks above and away from any place that liquid can reach, also when a glass breaks or a tank lets go.',
      'Put a tray under what can spill, lead cables to it from above with a low loop so that drops fall off before the connector, and cover what must stay near.',
      'Dry the floor before each take. Wet hands touch no switch.',
      'Some liquids burn, and their vapours more so: alcohol, oils, solvents. Keep them from hot lamps and open connectors, with an extinguisher that suits them at hand.',
    ],
  },
  heat: {
    title: 'Heat',
    says: 'Lamps this strong heat whatever they light, and are hot themselves.',
    points: [
      'Keep the distances the makers give from lamp to anything that can burn, and more for diffusion, gels, paper and cloth in front of a lamp.',
      'Strike or dim lamps between takes. A product that can stand the light for a minute may not stand a rehearsal.',
      'Lamps, barn doors, gobos and lit metal stay hot for long after they are off. Use gloves, and let lamps cool before moving them.',
      'A lens or a curved glass can focus a beam: look where the light goes on, also behind the subject.',
      'People on a hot set need breaks, water and air.',
    ],
  },
  'intense-light': {
    title: 'Intense light',
    says: 'High frame rates can ask for as much light as full sun, or several times that.',
    points: [
      'Nobody looks into a lamp or its mirror image, nor along a beam. Face lamps away before striking them, and call it.',
      'Light at full level for focus and takes only. Set and rehearse on less.',
      "Keep skin and eyes out of the beam. Strong sources give off ultraviolet and infrared as well as light, and some lamps lose their protection when a glass is cracked or a filter is taken out: keep them in place, and follow the maker's distances and times.",
      'Cameras and people with dilated pupils, light-sensitive skin or certain medicines are more at risk than others. Ask.',
      'Bright places beside dark ones hide cables and edges. Mark the way.',
    ],
  },
  'flashing-light-and-photosensitive-people': {
    title: 'Flashing light and photosensitive people',
    says: 'Strobes, pulsed lamps and dimmed lamps can flicker visibly, and a playback at another rate can flicker where the set did not.',
    points: [
      'Say so on the call sheet and at the door, before people come in.',
      'Flashing at roughly 3 to 60 times a second is the range most often named as provoking seizures in those who are prone to them, and large areas and deep red are named as worse. Broadcasters and guidelines publish limits for what is shown; check a film against the one that applies before it is shown.',
      'Anyone may leave without asking.',
    ],
  },
  glass: {
    title: 'Glass',
    says: 'Glass is dropped, poured into, heated and struck here.',
    points: [
      'Hot glass and cold liquid, and cold glass under a hot lamp, break. Warm and cool slowly.',
      'Put a guard between a hero that may break and lens, crew and lamps. Eye protection for whoever stands near, gloves for whoever picks up.',
      'Count pieces in and out. A broken piece in food or drink ends that batch.',
      'A lamp with a cracked front glass goes out of use.',
    ],
  },
  'moving-rigs': {
    title: 'Moving rigs',
    says: 'A rig that throws, drops, swings or drives something does so without looking.',
    points: [
      'Agree in words who arms it, who fires it, and what stops it, before it is loaded. One person, one trigger.',
      'Mark the space it can reach, with what it throws, and stand outside it whenever it is armed. Reach includes what breaks off.',
      'Springs, air and raised weights hold energy when the power is off. Make them slack, vent them, or pin them before hands go in.',
      'Test slowly, then empty, then loaded. After any change, test again.',
      'Motion-control cameras and robots are worked by people trained on them, behind the guards their makers ask for.',
    ],
  },
  'splash-and-flying-parts': {
    title: 'Splash and flying parts',
    says: 'What is fast enough to need slow motion can hurt at full speed.',
    points: [
      'Shield the lens and the people near it. The clearance a plan gives is room for the lens, not for a face.',
      'Eye protection for whoever must stand close. Powders and fine sprays can irritate and some can burn or explode in air: ask before using any.',
      'Clear slippery floors before the next take.',
    ],
  },
  flames: {
    title: 'Flames',
    says: 'Matches, burners, flambés and anything that flares.',
    points: [
      'Open flame is often forbidden or needs a permit, a fire watch and a person trained for it. Ask the venue and the local authority before planning it.',
      'Keep an extinguisher that suits the fuel, a fire blanket and a way out. Burning oil is smothered, never watered.',
      'Fuel stands closed and away from the set. Nothing is refilled while anything burns or is still hot.',
      'Clear paper, cloth, gel and hair from above and beside the flame; hot air and sparks rise farther than the picture shows.',
      'Let smoke and fumes out. After the take, watch what was burning until it is cold.',
    ],
  },
  'powders-and-dust': {
    title: 'Powders and dust',
    says: 'Flour, cocoa, sugar, starch, spices, fine pigments: what can be eaten can also burn in the air.',
    points: [
      'A cloud of fine organic or metal dust can explode from a flame, a spark, a hot lamp or a hot surface. Keep all of these away from it, and ask a licensed person before throwing more than a pinch.',
      'Use the least that shows. Let the air clear, and clean up between takes: dust that lies on lamps, beams and cables is the fuel of the next cloud.',
      'Extract the dust or air the room, and protect eyes and lungs. Some powders irritate, and some people are allergic to flour or nuts.',
      'Dust in fans and connectors of lamps and computers overheats them.',
    ],
  },
  'pressure-and-projectiles': {
    title: 'Pressure and projectiles',
    says: 'Compressed air, springs, corks, balloons, and whatever leaves faster than a hand could throw it.',
    points: [
      'Vessels, hoses and valves are used within the pressure their makers mark, with a gauge and a relief valve; home-made pressure vessels are not used.',
      'Nobody stands in front of a loaded launcher, cork or muzzle, nor behind what it is aimed at. A trap stops what misses.',
      'Arm last and disarm first: the last act before a take is to connect, and the first after it is to vent, and to show that it is vented.',
      'Guns, pellets, pyrotechnics and explosives belong to licensed armourers and technicians, whatever their size. A plan gives a frame rate for them and nothing else.',
    ],
  },
};

/** What every caution is and is not. */
export const WHAT_CAUTIONS_ARE =
  "This is a reminder of usual caution. It is neither an instruction nor an assessment of risk nor an approval. Local law and codes, the maker's instructions, the venue's rules and the person responsible on the set come first, and work that needs a licence is done by people who hold one. Where Longsecond compares a figure with a limit, it says whose limit it is; being within the limit that somebody publishes says that, and no more. Longsecond fires nothing and switches nothing: no rig, lamp, robot or camera.";
