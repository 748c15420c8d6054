"""What goods keep off, hold back or treat, and which goods do so: frost, by clothing and covers for plants. From
general knowledge of what such goods are for, and incomplete; common practice, no source."""

from __future__ import annotations

from .word_lists import said_of_goods

__all__ = ["GOODS_AGAINST", "KEPT_OFF"]

_NUISANCES = """
frost rain wind sun snow storm hail sleet slush ice cold chill heat glare fog damp breeze weather moisture uv water
  draught draft splash
: clothing, garment, footwear, headdress, headgear, headwear, glove, scarf, hat, jacket, coat, shoe, boot, umbrella,
  parasol, tent, tarpaulin, awning, canopy, shelter, blind, curtain, shutter, window, door, roof, wall, insulation,
  greenhouse, cloche, cover, protective covering, backpack, rucksack, pannier, helmet, goggles, spectacles,
  sunglasses, lens, windshield, car, boat, bicycle, bike, motorcycle, pram, stroller, hammock, poncho, plant, garden,
  seedling, sealant, paint, varnish, coating, wax, fence, sunscreen, lotion, balm, cosmetic, blanket, flask, phone
  case, quilt
heat cold ice chill
: bottle, vacuum flask, thermos, cooler, lunch box, cup, mug, oven, mitt, potholder, trivet, coaster, placemat, hot,
  handle, pot, pan, bedclothes, bedding, duvet, sock, slipper, compress, freezer, pipe
fire spark heat soot
: fireplace, stove, hearth, chimney, extinguisher, alarm, detector, safe, furnace, grill, barbecue, firepit, brazier,
  lantern, candle, oven, welding, apron, campfire, fire screen
dust dirt mud sand stain crumb sweat spill splash splatter spatter grease grime soot hair fluff lint
: linen, household linen, table linen, tablecloth, fabric, textile, upholstery, sofa, couch, furniture, carpet, rug,
  mat, clothing, garment, footwear, apron, bib, cleaner, cleaning, detergent, cleansing agent, polish, wax, brush,
  sponge, cloth, wipe, mop, broom, vacuum, filter, car, bicycle, bike, dog, cat, pet, horse, cover, case, storage,
  mattress, pillow, keyboard, phone, lens, window, boat, laundry, washing, dishwasher, worktop, floor, tile, wall,
  paint, towel, gaiter, mudguard, toaster, cooker, pan, headband, wristband, fryer, drain, mask, doormat, camera
odour odor smell stink mould mold mildew damp moisture germ virus bacteria fungus algae pollen sweat
: shoe, footwear, boot, sock, insole, insert, deodorant, refrigerator, fridge, bin, laundry, wardrobe, closet,
  cleaner, cleaning, detergent, cleansing agent, soap, disinfectant, sanitizer, filter, purifier, air, mask,
  dehumidifier, litter, cat, dog, pet, mattress, bedding, bedclothes, towel, underwear, undergarment, sportswear,
  bathroom, shower, grout, sealant, paint, wall, roof, tile, decking, pond, aquarium, pool, bread, lunch box, sponge,
  toothbrush, cutting board, compost, car, kitchen, diaper, nappy
bug insect moth mosquito tick flea fly wasp ant spider mite gnat midge hornet louse lice nit aphid greenfly woodworm
  cockroach termite pest vermin bite sting
: net, netting, mesh, screen, repellent, insecticide, pesticide, bait, citronella, cedar, cedarwood, wardrobe, closet,
  drawer, sachet, mattress, window, door, dog, cat, pet, horse, cattle, tent, hammock, garden, plant, crop, vegetable,
  tree, greenhouse, comb, shampoo, hive, food cover, bowl cover, wood treatment, preservative, garment bag, picnic
slug snail mouse rat deer vole mole rabbit pigeon squirrel marten badger rodent vermin pest weed
: garden, plant, plant pot, flowerpot, planter, seed, seedling, bulb, tree, lawn, bed, crop, vegetable, fence,
  fencing, net, netting, mesh, cage, feeder, car, roof, gutter, solar, loft, compost, mulch, repellent, bait,
  pesticide, rodenticide, coop, hutch, balcony, windowsill, copper, orchard, paving, allotment
rust tarnish
: metal, steel, iron, tool, knife, cutlery, cookware, pan, skillet, bicycle, bike, chain, car, lock, hinge, nail,
  screw, oil, lubricant, wax, paint, primer, polish, jewellery, jewelry, silver, copper, brass, watch, barbecue,
  scissors, razor, boat, gate, fence, cleaner
scratch scuff
: furniture, floor, chair, felt, cookware, pan, lens, spectacles, sunglasses, phone, screen, case, film, cover, car,
  paint, varnish, polish, wax, leather, shoe, boot, worktop, table, watch, cat, tray, sponge, scourer, coaster,
  luggage
limescale clog plaque
: kettle, machine, cleaner, cleaning, cleansing agent, shower, tap, toilet, dishwasher, washing, filter, softener,
  drain, pipe, sink, descaler, bathroom, gutter, aquarium, humidifier
plaque germ
: tooth, toothpaste, toothbrush, dental, floss, mouthwash, dentifrice, chew
wrinkle crease static fluff lint pill fade shrink
: fabric, textile, clothing, garment, linen, household linen, table linen, shirt, curtain, laundry, detergent,
  softener, iron, ironing, dryer, steamer, hanger, luggage, suitcase, travel, brush, dye, yarn, wool, sweater, carpet,
  paint
wrinkle itch chafe sweat bite sting frizz
: cream, balm, lotion, serum, ointment, cosmetic, toiletry, deodorant, soap, skin, medicine, underwear, undergarment,
  sock, headband, towel, shirt, baby, saddle, legging, shampoo, powder
tangle frizz knot static
: hair, hairbrush, comb, shampoo, conditioner, cable, cord, leash, lead, yarn, wool, thread, fishing, headphone,
  earphone, necklace, rope, hose, kite
noise squeak creak rattle wobble snore
: oil, lubricant, wax, hinge, door, floor, floorboard, bed, table, chair, furniture, felt, window, curtain, earplug,
  headphone, panel, acoustic, bicycle, bike, brake, shoe, pillow, mouthguard, nasal, washing, wedge, drawer, tool
leak drip spill splash moisture water
: bottle, cup, mug, flask, container, jar, lid, tap, faucet, pipe, hose, valve, roof, bucket, teapot, jug, candle,
  funnel, pen, ink, sealant, seal, tape, diaper, nappy, pouch, liner, tray, coaster, lunch box, bag, pot, bowl, watch,
  phone, rest, spoon rest, mat, saucer, jug, carafe
slip skid wobble
: mat, rug, carpet, sole, shoe, boot, sock, slipper, footwear, glove, grip, handle, tape, stair, step, bath, shower,
  tray, hanger, coaster, bowl, board, ladder, tool, tyre, tire, strap, yoga, crutch, stand
shock
: helmet, case, padding, pad, sole, shoe, plug, cable, socket, electrical, glove, insole, bicycle, saddle, bumper
theft
: lock, bag, wallet, purse, backpack, luggage, bicycle, bike, safe, alarm, tag, chain, car, window, door, camera,
  motorcycle
"""
"""Words for what is unwelcome, and after the colon the goods that keep it off: their own words, or what dictionaries
call them."""


GOODS_AGAINST = said_of_goods(_NUISANCES)
"""What is unwelcome, with the goods that are against it."""
KEPT_OFF = frozenset(GOODS_AGAINST)
