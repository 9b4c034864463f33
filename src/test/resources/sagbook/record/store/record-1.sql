BEGIN TRANSACTION;
PRAGMA user_version = 1;
PRAGMA application_id = 1935763298;
CREATE TABLE bank_check (
  id INTEGER PRIMARY KEY,
  pack TEXT NOT NULL,
  timezone TEXT NOT NULL,
  chemistry TEXT NOT NULL,
  nominal_capacity_ah REAL NOT NULL,
  software TEXT NOT NULL,
  settings_sha256 TEXT NOT NULL,
  bank TEXT NOT NULL,
  from_time TEXT NOT NULL,
  to_time TEXT NOT NULL,
  headline TEXT NOT NULL,
  severity TEXT NOT NULL,
  log_rows INTEGER NOT NULL,
  cadence_s REAL,
  resistance_pulse_s REAL
);
INSERT INTO "bank_check" VALUES(1,'Boathouse battery','Europe/Lisbon','lfp',280.0,'0.1.0','aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa','main','2026-05-01T00:00:00Z','2026-05-31T23:55:00Z','Cell 12 limits the battery; replacing it would add about 30 Ah; cells 5 and 7 need a hand, the others are fine.','ATTENTION',535680,5.0,10.0);
CREATE TABLE bank_count (
  check_id INTEGER NOT NULL REFERENCES bank_check (id) ON DELETE CASCADE,
  quantity TEXT NOT NULL,
  value REAL NOT NULL,
  PRIMARY KEY (check_id, quantity)
);
INSERT INTO "bank_count" VALUES(1,'hours',743.2);
INSERT INTO "bank_count" VALUES(1,'charged_ah',5210.4);
INSERT INTO "bank_count" VALUES(1,'discharged_ah',5188.2);
INSERT INTO "bank_count" VALUES(1,'charged_kwh',280.1);
INSERT INTO "bank_count" VALUES(1,'discharged_kwh',268.9);
INSERT INTO "bank_count" VALUES(1,'highest_discharge_a',64.2);
CREATE TABLE bank_estimate (
  check_id INTEGER NOT NULL REFERENCES bank_check (id) ON DELETE CASCADE,
  quantity TEXT NOT NULL,
  value REAL,
  low REAL,
  high REAL,
  note TEXT,
  PRIMARY KEY (check_id, quantity)
);
INSERT INTO "bank_estimate" VALUES(1,'median_capacity_ah',276.4,2.72676068399999962823e+02,280.1239316,NULL);
INSERT INTO "bank_estimate" VALUES(1,'string_usable_ah',236.2,2.32084075599999977161e+02,240.3159244,NULL);
INSERT INTO "bank_estimate" VALUES(1,'string_balanced_ah',243.1,238.3960864,247.8039136,NULL);
INSERT INTO "bank_estimate" VALUES(1,'activation_energy_kj_per_mol',24.1,1.97880792000000020891e+01,28.4119208,NULL);
CREATE TABLE cell_estimate (
  check_id INTEGER NOT NULL REFERENCES bank_check (id) ON DELETE CASCADE,
  cell INTEGER NOT NULL,
  quantity TEXT NOT NULL,
  value REAL,
  low REAL,
  high REAL,
  note TEXT,
  PRIMARY KEY (check_id, cell, quantity)
);
INSERT INTO "cell_estimate" VALUES(1,1,'capacity_ah',276.0,269.9241116,282.0758884,NULL);
INSERT INTO "cell_estimate" VALUES(1,1,'capacity_relative',9.98552821997105710671e-01,9.76993217997105700689e-01,1.02011242599710572065e+00,NULL);
INSERT INTO "cell_estimate" VALUES(1,1,'resistance_mohm',0.33,0.306480432,0.353519568,NULL);
INSERT INTO "cell_estimate" VALUES(1,1,'resistance_relative',1.02484472049689445682e+00,9.66045800496894480069e-01,1.08364364049689454461e+00,NULL);
INSERT INTO "cell_estimate" VALUES(1,1,'ohmic_excess_mohm',0.001,-0.01859964,2.05996400000000023933e-02,NULL);
INSERT INTO "cell_estimate" VALUES(1,1,'slow_response_relative',1.01,0.93160144,1.08839856,NULL);
INSERT INTO "cell_estimate" VALUES(1,1,'charge_offset_percent',-1.50000000000000022204e-01,-0.7379892,4.37989199999999967438e-01,NULL);
INSERT INTO "cell_estimate" VALUES(1,1,'self_discharge_ma',0.4,-1.75596040000000019887e+00,2.5559604,NULL);
INSERT INTO "cell_estimate" VALUES(1,1,'voltage_offset_mv',-9.99999999999999777955e-02,-1.2759784,1.0759784,NULL);
INSERT INTO "cell_estimate" VALUES(1,1,'loss_ah',0.1,-1.0759784,1.2759784,NULL);
INSERT INTO "cell_estimate" VALUES(1,2,'capacity_ah',278.0,269.9641476,286.0358524,NULL);
INSERT INTO "cell_estimate" VALUES(1,2,'capacity_relative',1.0057887120115776014e+00,9.84229108011577591419e-01,1.02734831601157750036e+00,NULL);
INSERT INTO "cell_estimate" VALUES(1,2,'resistance_mohm',0.322,0.298480432,0.345519568,NULL);
INSERT INTO "cell_estimate" VALUES(1,2,'resistance_relative',1.0,0.94120108,1.05879892,NULL);
INSERT INTO "cell_estimate" VALUES(1,2,'ohmic_excess_mohm',0.002,-0.01759964,2.15996400000000032814e-02,NULL);
INSERT INTO "cell_estimate" VALUES(1,2,'slow_response_relative',1.02,0.94160144,1.0983985600000001348e+00,NULL);
INSERT INTO "cell_estimate" VALUES(1,2,'charge_offset_percent',9.99999999999999777955e-02,-0.4879892,0.6879892,NULL);
INSERT INTO "cell_estimate" VALUES(1,2,'self_discharge_ma',0.8,-1.3559604,2.9559604000000003765e+00,NULL);
INSERT INTO "cell_estimate" VALUES(1,2,'voltage_offset_mv',1.00000000000000033306e-01,-1.0759784,1.2759784,NULL);
INSERT INTO "cell_estimate" VALUES(1,2,'loss_ah',0.1,-1.0759784,1.2759784,NULL);
INSERT INTO "cell_estimate" VALUES(1,3,'capacity_ah',NULL,NULL,NULL,'Cell 3 was never seen near empty.');
INSERT INTO "cell_estimate" VALUES(1,3,'capacity_relative',NULL,NULL,NULL,'Cell 3 was never seen near empty.');
INSERT INTO "cell_estimate" VALUES(1,3,'resistance_mohm',0.314,0.290480432,0.337519568,NULL);
INSERT INTO "cell_estimate" VALUES(1,3,'resistance_relative',9.7515527950310554317e-01,9.1635635950310556641e-01,1.03395419950310563095e+00,NULL);
INSERT INTO "cell_estimate" VALUES(1,3,'ohmic_excess_mohm',0.0,-0.01959964,0.01959964,NULL);
INSERT INTO "cell_estimate" VALUES(1,3,'slow_response_relative',1.0,0.92160144,1.07839856000000011704e+00,NULL);
INSERT INTO "cell_estimate" VALUES(1,3,'charge_offset_percent',0.35,-0.2379892,0.9379892,NULL);
INSERT INTO "cell_estimate" VALUES(1,3,'self_discharge_ma',0.0,-2.1559604,2.1559604,NULL);
INSERT INTO "cell_estimate" VALUES(1,3,'voltage_offset_mv',3.0000000000000009992e-01,-8.75978399999999934877e-01,1.4759784,NULL);
INSERT INTO "cell_estimate" VALUES(1,3,'loss_ah',NULL,NULL,NULL,'Without its capacity the loss can''t be told.');
INSERT INTO "cell_estimate" VALUES(1,4,'capacity_ah',277.0,270.9241116,283.0758884,NULL);
INSERT INTO "cell_estimate" VALUES(1,4,'capacity_relative',1.00217076700434160052e+00,9.80611163004341590543e-01,1.02373037100434149948e+00,NULL);
INSERT INTO "cell_estimate" VALUES(1,4,'resistance_mohm',0.334,3.10480432000000028391e-01,0.357519568,NULL);
INSERT INTO "cell_estimate" VALUES(1,4,'resistance_relative',1.03726708074534168524e+00,9.78468160745341708484e-01,1.09606600074534177302e+00,NULL);
INSERT INTO "cell_estimate" VALUES(1,4,'ohmic_excess_mohm',0.001,-0.01859964,2.05996400000000023933e-02,NULL);
INSERT INTO "cell_estimate" VALUES(1,4,'slow_response_relative',1.01,0.93160144,1.08839856,NULL);
INSERT INTO "cell_estimate" VALUES(1,4,'charge_offset_percent',-0.4,-0.9879892,1.87989199999999967438e-01,NULL);
INSERT INTO "cell_estimate" VALUES(1,4,'self_discharge_ma',0.4,-1.75596040000000019887e+00,2.5559604,NULL);
INSERT INTO "cell_estimate" VALUES(1,4,'voltage_offset_mv',-0.3,-1.4759784,8.75978399999999934877e-01,NULL);
INSERT INTO "cell_estimate" VALUES(1,4,'loss_ah',0.1,-1.0759784,1.2759784,NULL);
INSERT INTO "cell_estimate" VALUES(1,5,'capacity_ah',274.0,265.9641476,282.0358524,NULL);
INSERT INTO "cell_estimate" VALUES(1,5,'capacity_relative',9.91316931982633930964e-01,9.69757327982633920981e-01,1.01287653598263394094e+00,NULL);
INSERT INTO "cell_estimate" VALUES(1,5,'resistance_mohm',0.326,0.302480432,0.349519568,NULL);
INSERT INTO "cell_estimate" VALUES(1,5,'resistance_relative',1.01242236024844722841e+00,9.53623440248447251654e-01,1.07122128024844731619e+00,NULL);
INSERT INTO "cell_estimate" VALUES(1,5,'ohmic_excess_mohm',0.002,-0.01759964,2.15996400000000032814e-02,NULL);
INSERT INTO "cell_estimate" VALUES(1,5,'slow_response_relative',1.02,0.94160144,1.0983985600000001348e+00,NULL);
INSERT INTO "cell_estimate" VALUES(1,5,'charge_offset_percent',4.2,3.6120108,4.7879892,NULL);
INSERT INTO "cell_estimate" VALUES(1,5,'self_discharge_ma',0.8,-1.3559604,2.9559604000000003765e+00,NULL);
INSERT INTO "cell_estimate" VALUES(1,5,'voltage_offset_mv',-9.99999999999999777955e-02,-1.2759784,1.0759784,NULL);
INSERT INTO "cell_estimate" VALUES(1,5,'loss_ah',6.9,4.1560504,9.64394960000000089905e+00,NULL);
INSERT INTO "cell_estimate" VALUES(1,6,'capacity_ah',276.0,271.8840756,280.1159244,NULL);
INSERT INTO "cell_estimate" VALUES(1,6,'capacity_relative',9.98552821997105710671e-01,9.76993217997105700689e-01,1.02011242599710572065e+00,NULL);
INSERT INTO "cell_estimate" VALUES(1,6,'resistance_mohm',0.318,0.294480432,0.341519568,NULL);
INSERT INTO "cell_estimate" VALUES(1,6,'resistance_relative',9.87577639751552771585e-01,9.28778719751552794825e-01,1.04637655975155285936e+00,NULL);
INSERT INTO "cell_estimate" VALUES(1,6,'ohmic_excess_mohm',0.0,-0.01959964,0.01959964,NULL);
INSERT INTO "cell_estimate" VALUES(1,6,'slow_response_relative',1.0,0.92160144,1.07839856000000011704e+00,NULL);
INSERT INTO "cell_estimate" VALUES(1,6,'charge_offset_percent',9.99999999999999777955e-02,-0.4879892,0.6879892,NULL);
INSERT INTO "cell_estimate" VALUES(1,6,'self_discharge_ma',0.0,-2.1559604,2.1559604,NULL);
INSERT INTO "cell_estimate" VALUES(1,6,'voltage_offset_mv',1.00000000000000033306e-01,-1.0759784,1.2759784,NULL);
INSERT INTO "cell_estimate" VALUES(1,6,'loss_ah',0.1,-1.0759784,1.2759784,NULL);
INSERT INTO "cell_estimate" VALUES(1,7,'capacity_ah',278.0,271.9241116,284.0758884,NULL);
INSERT INTO "cell_estimate" VALUES(1,7,'capacity_relative',1.0057887120115776014e+00,9.84229108011577591419e-01,1.02734831601157750036e+00,NULL);
INSERT INTO "cell_estimate" VALUES(1,7,'resistance_mohm',0.62,0.596480432,0.643519568,NULL);
INSERT INTO "cell_estimate" VALUES(1,7,'resistance_relative',1.92546583850931662951e+00,1.86666691850931654172e+00,1.98426475850931671729e+00,NULL);
INSERT INTO "cell_estimate" VALUES(1,7,'ohmic_excess_mohm',0.29,0.27040036,3.09599639999999953765e-01,NULL);
INSERT INTO "cell_estimate" VALUES(1,7,'slow_response_relative',1.01,0.93160144,1.08839856,NULL);
INSERT INTO "cell_estimate" VALUES(1,7,'charge_offset_percent',0.35,-0.2379892,0.9379892,NULL);
INSERT INTO "cell_estimate" VALUES(1,7,'self_discharge_ma',0.4,-1.75596040000000019887e+00,2.5559604,NULL);
INSERT INTO "cell_estimate" VALUES(1,7,'voltage_offset_mv',3.0000000000000009992e-01,-8.75978399999999934877e-01,1.4759784,NULL);
INSERT INTO "cell_estimate" VALUES(1,7,'loss_ah',2.1,3.36032400000000119888e-01,3.8639676,NULL);
INSERT INTO "cell_estimate" VALUES(1,8,'capacity_ah',275.0,266.9641476,283.0358524,NULL);
INSERT INTO "cell_estimate" VALUES(1,8,'capacity_relative',9.94934876989869820818e-01,9.73375272989869810835e-01,1.01649448098986971977e+00,NULL);
INSERT INTO "cell_estimate" VALUES(1,8,'resistance_mohm',0.33,0.306480432,0.353519568,NULL);
INSERT INTO "cell_estimate" VALUES(1,8,'resistance_relative',1.02484472049689445682e+00,9.66045800496894480069e-01,1.08364364049689454461e+00,NULL);
INSERT INTO "cell_estimate" VALUES(1,8,'ohmic_excess_mohm',0.002,-0.01759964,2.15996400000000032814e-02,NULL);
INSERT INTO "cell_estimate" VALUES(1,8,'slow_response_relative',1.02,0.94160144,1.0983985600000001348e+00,NULL);
INSERT INTO "cell_estimate" VALUES(1,8,'charge_offset_percent',-0.4,-0.9879892,1.87989199999999967438e-01,NULL);
INSERT INTO "cell_estimate" VALUES(1,8,'self_discharge_ma',0.8,-1.3559604,2.9559604000000003765e+00,NULL);
INSERT INTO "cell_estimate" VALUES(1,8,'voltage_offset_mv',-0.3,-1.4759784,8.75978399999999934877e-01,NULL);
INSERT INTO "cell_estimate" VALUES(1,8,'loss_ah',0.1,-1.0759784,1.2759784,NULL);
INSERT INTO "cell_estimate" VALUES(1,9,'capacity_ah',277.0,272.8840756,281.1159244,NULL);
INSERT INTO "cell_estimate" VALUES(1,9,'capacity_relative',1.00217076700434160052e+00,9.80611163004341590543e-01,1.02373037100434149948e+00,NULL);
INSERT INTO "cell_estimate" VALUES(1,9,'resistance_mohm',0.322,0.298480432,0.345519568,NULL);
INSERT INTO "cell_estimate" VALUES(1,9,'resistance_relative',1.0,0.94120108,1.05879892,NULL);
INSERT INTO "cell_estimate" VALUES(1,9,'ohmic_excess_mohm',0.0,-0.01959964,0.01959964,NULL);
INSERT INTO "cell_estimate" VALUES(1,9,'slow_response_relative',1.0,0.92160144,1.07839856000000011704e+00,NULL);
INSERT INTO "cell_estimate" VALUES(1,9,'charge_offset_percent',-1.50000000000000022204e-01,-0.7379892,4.37989199999999967438e-01,NULL);
INSERT INTO "cell_estimate" VALUES(1,9,'self_discharge_ma',0.0,-2.1559604,2.1559604,NULL);
INSERT INTO "cell_estimate" VALUES(1,9,'voltage_offset_mv',-9.99999999999999777955e-02,-1.2759784,1.0759784,NULL);
INSERT INTO "cell_estimate" VALUES(1,9,'loss_ah',0.1,-1.0759784,1.2759784,NULL);
INSERT INTO "cell_estimate" VALUES(1,10,'capacity_ah',274.0,267.9241116,280.0758884,NULL);
INSERT INTO "cell_estimate" VALUES(1,10,'capacity_relative',9.91316931982633930964e-01,9.69757327982633920981e-01,1.01287653598263394094e+00,NULL);
INSERT INTO "cell_estimate" VALUES(1,10,'resistance_mohm',0.314,0.290480432,0.337519568,NULL);
INSERT INTO "cell_estimate" VALUES(1,10,'resistance_relative',9.7515527950310554317e-01,9.1635635950310556641e-01,1.03395419950310563095e+00,NULL);
INSERT INTO "cell_estimate" VALUES(1,10,'ohmic_excess_mohm',0.001,-0.01859964,2.05996400000000023933e-02,NULL);
INSERT INTO "cell_estimate" VALUES(1,10,'slow_response_relative',1.01,0.93160144,1.08839856,NULL);
INSERT INTO "cell_estimate" VALUES(1,10,'charge_offset_percent',9.99999999999999777955e-02,-0.4879892,0.6879892,NULL);
INSERT INTO "cell_estimate" VALUES(1,10,'self_discharge_ma',0.4,-1.75596040000000019887e+00,2.5559604,NULL);
INSERT INTO "cell_estimate" VALUES(1,10,'voltage_offset_mv',1.00000000000000033306e-01,-1.0759784,1.2759784,NULL);
INSERT INTO "cell_estimate" VALUES(1,10,'loss_ah',0.1,-1.0759784,1.2759784,NULL);
INSERT INTO "cell_estimate" VALUES(1,11,'capacity_ah',276.0,267.9641476,284.0358524,NULL);
INSERT INTO "cell_estimate" VALUES(1,11,'capacity_relative',9.98552821997105710671e-01,9.76993217997105700689e-01,1.02011242599710572065e+00,NULL);
INSERT INTO "cell_estimate" VALUES(1,11,'resistance_mohm',0.334,3.10480432000000028391e-01,0.357519568,NULL);
INSERT INTO "cell_estimate" VALUES(1,11,'resistance_relative',1.03726708074534168524e+00,9.78468160745341708484e-01,1.09606600074534177302e+00,NULL);
INSERT INTO "cell_estimate" VALUES(1,11,'ohmic_excess_mohm',0.002,-0.01759964,2.15996400000000032814e-02,NULL);
INSERT INTO "cell_estimate" VALUES(1,11,'slow_response_relative',1.02,0.94160144,1.0983985600000001348e+00,NULL);
INSERT INTO "cell_estimate" VALUES(1,11,'charge_offset_percent',0.35,-0.2379892,0.9379892,NULL);
INSERT INTO "cell_estimate" VALUES(1,11,'self_discharge_ma',0.8,-1.3559604,2.9559604000000003765e+00,NULL);
INSERT INTO "cell_estimate" VALUES(1,11,'voltage_offset_mv',3.0000000000000009992e-01,-8.75978399999999934877e-01,1.4759784,NULL);
INSERT INTO "cell_estimate" VALUES(1,11,'loss_ah',0.1,-1.0759784,1.2759784,NULL);
INSERT INTO "cell_estimate" VALUES(1,12,'capacity_ah',243.0,238.8840756,247.1159244,NULL);
INSERT INTO "cell_estimate" VALUES(1,12,'capacity_relative',8.79160636758321345496e-01,8.57601032758321335514e-01,9.00720240758321355478e-01,NULL);
INSERT INTO "cell_estimate" VALUES(1,12,'resistance_mohm',0.386,0.362480432,0.409519568,NULL);
INSERT INTO "cell_estimate" VALUES(1,12,'resistance_relative',1.19875776397515521054e+00,1.13995884397515512276e+00,1.25755668397515529832e+00,NULL);
INSERT INTO "cell_estimate" VALUES(1,12,'ohmic_excess_mohm',0.0,-0.01959964,0.01959964,NULL);
INSERT INTO "cell_estimate" VALUES(1,12,'slow_response_relative',1.24,1.16160144,1.31839855999999988611e+00,NULL);
INSERT INTO "cell_estimate" VALUES(1,12,'charge_offset_percent',1.4,8.12010799999999921539e-01,1.9879892,NULL);
INSERT INTO "cell_estimate" VALUES(1,12,'self_discharge_ma',0.0,-2.1559604,2.1559604,NULL);
INSERT INTO "cell_estimate" VALUES(1,12,'voltage_offset_mv',-0.3,-1.4759784,8.75978399999999934877e-01,NULL);
INSERT INTO "cell_estimate" VALUES(1,12,'loss_ah',30.2,24.1241116,36.2758884,NULL);
INSERT INTO "cell_estimate" VALUES(1,13,'capacity_ah',275.0,268.9241116,281.0758884,NULL);
INSERT INTO "cell_estimate" VALUES(1,13,'capacity_relative',9.94934876989869820818e-01,9.73375272989869810835e-01,1.01649448098986971977e+00,NULL);
INSERT INTO "cell_estimate" VALUES(1,13,'resistance_mohm',0.318,0.294480432,0.341519568,NULL);
INSERT INTO "cell_estimate" VALUES(1,13,'resistance_relative',9.87577639751552771585e-01,9.28778719751552794825e-01,1.04637655975155285936e+00,NULL);
INSERT INTO "cell_estimate" VALUES(1,13,'ohmic_excess_mohm',0.001,-0.01859964,2.05996400000000023933e-02,NULL);
INSERT INTO "cell_estimate" VALUES(1,13,'slow_response_relative',1.01,0.93160144,1.08839856,NULL);
INSERT INTO "cell_estimate" VALUES(1,13,'charge_offset_percent',-1.50000000000000022204e-01,-0.7379892,4.37989199999999967438e-01,NULL);
INSERT INTO "cell_estimate" VALUES(1,13,'self_discharge_ma',0.4,-1.75596040000000019887e+00,2.5559604,NULL);
INSERT INTO "cell_estimate" VALUES(1,13,'voltage_offset_mv',-9.99999999999999777955e-02,-1.2759784,1.0759784,NULL);
INSERT INTO "cell_estimate" VALUES(1,13,'loss_ah',0.1,-1.0759784,1.2759784,NULL);
INSERT INTO "cell_estimate" VALUES(1,14,'capacity_ah',277.0,268.9641476,285.0358524,NULL);
INSERT INTO "cell_estimate" VALUES(1,14,'capacity_relative',1.00217076700434160052e+00,9.80611163004341590543e-01,1.02373037100434149948e+00,NULL);
INSERT INTO "cell_estimate" VALUES(1,14,'resistance_mohm',0.31,0.286480432,0.333519568,NULL);
INSERT INTO "cell_estimate" VALUES(1,14,'resistance_relative',9.62732919254658314756e-01,9.03933999254658337996e-01,1.02153183925465840253e+00,NULL);
INSERT INTO "cell_estimate" VALUES(1,14,'ohmic_excess_mohm',0.002,-0.01759964,2.15996400000000032814e-02,NULL);
INSERT INTO "cell_estimate" VALUES(1,14,'slow_response_relative',1.02,0.94160144,1.0983985600000001348e+00,NULL);
INSERT INTO "cell_estimate" VALUES(1,14,'charge_offset_percent',9.99999999999999777955e-02,-0.4879892,0.6879892,NULL);
INSERT INTO "cell_estimate" VALUES(1,14,'self_discharge_ma',0.8,-1.3559604,2.9559604000000003765e+00,NULL);
INSERT INTO "cell_estimate" VALUES(1,14,'voltage_offset_mv',1.00000000000000033306e-01,-1.0759784,1.2759784,NULL);
INSERT INTO "cell_estimate" VALUES(1,14,'loss_ah',0.1,-1.0759784,1.2759784,NULL);
INSERT INTO "cell_estimate" VALUES(1,15,'capacity_ah',274.0,269.8840756,278.1159244,NULL);
INSERT INTO "cell_estimate" VALUES(1,15,'capacity_relative',9.91316931982633930964e-01,9.69757327982633920981e-01,1.01287653598263394094e+00,NULL);
INSERT INTO "cell_estimate" VALUES(1,15,'resistance_mohm',0.33,0.306480432,0.353519568,NULL);
INSERT INTO "cell_estimate" VALUES(1,15,'resistance_relative',1.02484472049689445682e+00,9.66045800496894480069e-01,1.08364364049689454461e+00,NULL);
INSERT INTO "cell_estimate" VALUES(1,15,'ohmic_excess_mohm',0.0,-0.01959964,0.01959964,NULL);
INSERT INTO "cell_estimate" VALUES(1,15,'slow_response_relative',1.0,0.92160144,1.07839856000000011704e+00,NULL);
INSERT INTO "cell_estimate" VALUES(1,15,'charge_offset_percent',0.35,-0.2379892,0.9379892,NULL);
INSERT INTO "cell_estimate" VALUES(1,15,'self_discharge_ma',0.0,-2.1559604,2.1559604,NULL);
INSERT INTO "cell_estimate" VALUES(1,15,'voltage_offset_mv',3.0000000000000009992e-01,-8.75978399999999934877e-01,1.4759784,NULL);
INSERT INTO "cell_estimate" VALUES(1,15,'loss_ah',0.1,-1.0759784,1.2759784,NULL);
INSERT INTO "cell_estimate" VALUES(1,16,'capacity_ah',276.0,269.9241116,282.0758884,NULL);
INSERT INTO "cell_estimate" VALUES(1,16,'capacity_relative',9.98552821997105710671e-01,9.76993217997105700689e-01,1.02011242599710572065e+00,NULL);
INSERT INTO "cell_estimate" VALUES(1,16,'resistance_mohm',0.322,0.298480432,0.345519568,NULL);
INSERT INTO "cell_estimate" VALUES(1,16,'resistance_relative',1.0,0.94120108,1.05879892,NULL);
INSERT INTO "cell_estimate" VALUES(1,16,'ohmic_excess_mohm',0.001,-0.01859964,2.05996400000000023933e-02,NULL);
INSERT INTO "cell_estimate" VALUES(1,16,'slow_response_relative',1.01,0.93160144,1.08839856,NULL);
INSERT INTO "cell_estimate" VALUES(1,16,'charge_offset_percent',-0.4,-0.9879892,1.87989199999999967438e-01,NULL);
INSERT INTO "cell_estimate" VALUES(1,16,'self_discharge_ma',0.4,-1.75596040000000019887e+00,2.5559604,NULL);
INSERT INTO "cell_estimate" VALUES(1,16,'voltage_offset_mv',-0.3,-1.4759784,8.75978399999999934877e-01,NULL);
INSERT INTO "cell_estimate" VALUES(1,16,'loss_ah',0.1,-1.0759784,1.2759784,NULL);
CREATE TABLE cell_finding (
  check_id INTEGER NOT NULL REFERENCES bank_check (id) ON DELETE CASCADE,
  cell INTEGER NOT NULL,
  place_rank INTEGER NOT NULL,
  finding TEXT NOT NULL,
  action TEXT NOT NULL,
  PRIMARY KEY (check_id, cell)
);
INSERT INTO "cell_finding" VALUES(1,1,5,'HEALTHY','Nothing to do.');
INSERT INTO "cell_finding" VALUES(1,2,6,'HEALTHY','Nothing to do.');
INSERT INTO "cell_finding" VALUES(1,3,4,'INSUFFICIENT_EVIDENCE','Run the battery down once more so that cell 3 can be judged.');
INSERT INTO "cell_finding" VALUES(1,4,7,'HEALTHY','Nothing to do.');
INSERT INTO "cell_finding" VALUES(1,5,3,'OUT_OF_BALANCE','Charge slowly to full so that the boards can bring cell 5 in line.');
INSERT INTO "cell_finding" VALUES(1,6,8,'HEALTHY','Nothing to do.');
INSERT INTO "cell_finding" VALUES(1,7,2,'CONNECTION','Clean and tighten the joints of cell 7.');
INSERT INTO "cell_finding" VALUES(1,8,9,'HEALTHY','Nothing to do.');
INSERT INTO "cell_finding" VALUES(1,9,10,'HEALTHY','Nothing to do.');
INSERT INTO "cell_finding" VALUES(1,10,11,'HEALTHY','Nothing to do.');
INSERT INTO "cell_finding" VALUES(1,11,12,'HEALTHY','Nothing to do.');
INSERT INTO "cell_finding" VALUES(1,12,1,'LOW_CAPACITY','Replace cell 12 before the winter.');
INSERT INTO "cell_finding" VALUES(1,13,13,'HEALTHY','Nothing to do.');
INSERT INTO "cell_finding" VALUES(1,14,14,'HEALTHY','Nothing to do.');
INSERT INTO "cell_finding" VALUES(1,15,15,'HEALTHY','Nothing to do.');
INSERT INTO "cell_finding" VALUES(1,16,16,'HEALTHY','Nothing to do.');
CREATE TABLE cell_reading (
  check_id INTEGER NOT NULL REFERENCES bank_check (id) ON DELETE CASCADE,
  cell INTEGER NOT NULL,
  quantity TEXT NOT NULL,
  value REAL NOT NULL,
  PRIMARY KEY (check_id, cell, quantity)
);
INSERT INTO "cell_reading" VALUES(1,1,'highest_voltage_v',3.36449027061462402343e+00);
INSERT INTO "cell_reading" VALUES(1,1,'lowest_voltage_v',3.17734956741333);
INSERT INTO "cell_reading" VALUES(1,1,'hours_above_max_voltage',0.0);
INSERT INTO "cell_reading" VALUES(1,1,'hours_below_min_voltage',0.0);
INSERT INTO "cell_reading" VALUES(1,1,'lowest_temperature_c',1.21680002212524414058e+01);
INSERT INTO "cell_reading" VALUES(1,1,'mean_temperature_c',1.83639998435974121093e+01);
INSERT INTO "cell_reading" VALUES(1,1,'highest_temperature_c',2.45599994659423828116e+01);
INSERT INTO "cell_reading" VALUES(1,1,'hours_charging_cold',0.0);
INSERT INTO "cell_reading" VALUES(1,1,'hours_charging_hot',0.0);
INSERT INTO "cell_reading" VALUES(1,1,'hours_hot',0.0);
INSERT INTO "cell_reading" VALUES(1,2,'highest_voltage_v',3.36342978477478027343e+00);
INSERT INTO "cell_reading" VALUES(1,2,'lowest_voltage_v',3.17821955680847167968e+00);
INSERT INTO "cell_reading" VALUES(1,2,'hours_above_max_voltage',0.0);
INSERT INTO "cell_reading" VALUES(1,2,'hours_below_min_voltage',0.0);
INSERT INTO "cell_reading" VALUES(1,2,'lowest_temperature_c',1.23179998397827148435e+01);
INSERT INTO "cell_reading" VALUES(1,2,'mean_temperature_c',1.85139994621276855468e+01);
INSERT INTO "cell_reading" VALUES(1,2,'highest_temperature_c',2.47099990844726562504e+01);
INSERT INTO "cell_reading" VALUES(1,2,'hours_charging_cold',0.0);
INSERT INTO "cell_reading" VALUES(1,2,'hours_charging_hot',0.0);
INSERT INTO "cell_reading" VALUES(1,2,'hours_hot',0.0);
INSERT INTO "cell_reading" VALUES(1,3,'highest_voltage_v',3.36486220359802246093e+00);
INSERT INTO "cell_reading" VALUES(1,3,'lowest_voltage_v',3.18013024330139160156e+00);
INSERT INTO "cell_reading" VALUES(1,3,'hours_above_max_voltage',0.0);
INSERT INTO "cell_reading" VALUES(1,3,'hours_below_min_voltage',0.0);
INSERT INTO "cell_reading" VALUES(1,3,'lowest_temperature_c',1.24680004119873046877e+01);
INSERT INTO "cell_reading" VALUES(1,3,'mean_temperature_c',1.86640005111694335937e+01);
INSERT INTO "cell_reading" VALUES(1,3,'highest_temperature_c',2.48600006103515625e+01);
INSERT INTO "cell_reading" VALUES(1,3,'hours_charging_cold',0.0);
INSERT INTO "cell_reading" VALUES(1,3,'hours_charging_hot',0.0);
INSERT INTO "cell_reading" VALUES(1,3,'hours_hot',0.0);
INSERT INTO "cell_reading" VALUES(1,4,'highest_voltage_v',3.36375951766967773437e+00);
INSERT INTO "cell_reading" VALUES(1,4,'lowest_voltage_v',3.17588567733764648437e+00);
INSERT INTO "cell_reading" VALUES(1,4,'hours_above_max_voltage',0.0);
INSERT INTO "cell_reading" VALUES(1,4,'hours_below_min_voltage',0.0);
INSERT INTO "cell_reading" VALUES(1,4,'lowest_temperature_c',1.26180000305175781254e+01);
INSERT INTO "cell_reading" VALUES(1,4,'mean_temperature_c',1.88140001296997070312e+01);
INSERT INTO "cell_reading" VALUES(1,4,'highest_temperature_c',2.50100002288818359366e+01);
INSERT INTO "cell_reading" VALUES(1,4,'hours_charging_cold',0.0);
INSERT INTO "cell_reading" VALUES(1,4,'hours_charging_hot',0.0);
INSERT INTO "cell_reading" VALUES(1,4,'hours_hot',0.0);
INSERT INTO "cell_reading" VALUES(1,5,'highest_voltage_v',3.62045812606811523437e+00);
INSERT INTO "cell_reading" VALUES(1,5,'lowest_voltage_v',3.19473576545715332031e+00);
INSERT INTO "cell_reading" VALUES(1,5,'hours_above_max_voltage',1.25);
INSERT INTO "cell_reading" VALUES(1,5,'hours_below_min_voltage',0.0);
INSERT INTO "cell_reading" VALUES(1,5,'lowest_temperature_c',1.2767999649047851562e+01);
INSERT INTO "cell_reading" VALUES(1,5,'mean_temperature_c',1.89639997482299804687e+01);
INSERT INTO "cell_reading" VALUES(1,5,'highest_temperature_c',2.51599998474121093754e+01);
INSERT INTO "cell_reading" VALUES(1,5,'hours_charging_cold',0.0);
INSERT INTO "cell_reading" VALUES(1,5,'hours_charging_hot',0.0);
INSERT INTO "cell_reading" VALUES(1,5,'hours_hot',0.0);
INSERT INTO "cell_reading" VALUES(1,6,'highest_voltage_v',3.36387681961059570312e+00);
INSERT INTO "cell_reading" VALUES(1,6,'lowest_voltage_v',3.17884159088134765625e+00);
INSERT INTO "cell_reading" VALUES(1,6,'hours_above_max_voltage',0.0);
INSERT INTO "cell_reading" VALUES(1,6,'hours_below_min_voltage',0.0);
INSERT INTO "cell_reading" VALUES(1,6,'lowest_temperature_c',1.29180002212524414062e+01);
INSERT INTO "cell_reading" VALUES(1,6,'mean_temperature_c',1.91139998435974121093e+01);
INSERT INTO "cell_reading" VALUES(1,6,'highest_temperature_c',2.5309999465942382812e+01);
INSERT INTO "cell_reading" VALUES(1,6,'hours_charging_cold',0.0);
INSERT INTO "cell_reading" VALUES(1,6,'hours_charging_hot',0.0);
INSERT INTO "cell_reading" VALUES(1,6,'hours_hot',0.0);
INSERT INTO "cell_reading" VALUES(1,7,'highest_voltage_v',3.38380193710327148437e+00);
INSERT INTO "cell_reading" VALUES(1,7,'lowest_voltage_v',3.17369389533996582031e+00);
INSERT INTO "cell_reading" VALUES(1,7,'hours_above_max_voltage',0.0);
INSERT INTO "cell_reading" VALUES(1,7,'hours_below_min_voltage',0.0);
INSERT INTO "cell_reading" VALUES(1,7,'lowest_temperature_c',1.30679998397827148439e+01);
INSERT INTO "cell_reading" VALUES(1,7,'mean_temperature_c',1.92639994621276855468e+01);
INSERT INTO "cell_reading" VALUES(1,7,'highest_temperature_c',2.54599990844726562508e+01);
INSERT INTO "cell_reading" VALUES(1,7,'hours_charging_cold',0.0);
INSERT INTO "cell_reading" VALUES(1,7,'hours_charging_hot',0.0);
INSERT INTO "cell_reading" VALUES(1,7,'hours_hot',0.0);
INSERT INTO "cell_reading" VALUES(1,8,'highest_voltage_v',3.36449503898620605468e+00);
INSERT INTO "cell_reading" VALUES(1,8,'lowest_voltage_v',3.17641520500183105468e+00);
INSERT INTO "cell_reading" VALUES(1,8,'hours_above_max_voltage',0.0);
INSERT INTO "cell_reading" VALUES(1,8,'hours_below_min_voltage',0.0);
INSERT INTO "cell_reading" VALUES(1,8,'lowest_temperature_c',1.3218000411987304687e+01);
INSERT INTO "cell_reading" VALUES(1,8,'mean_temperature_c',1.94140005111694335937e+01);
INSERT INTO "cell_reading" VALUES(1,8,'highest_temperature_c',2.56100006103515625004e+01);
INSERT INTO "cell_reading" VALUES(1,8,'hours_charging_cold',0.0);
INSERT INTO "cell_reading" VALUES(1,8,'hours_charging_hot',0.0);
INSERT INTO "cell_reading" VALUES(1,8,'hours_hot',0.0);
INSERT INTO "cell_reading" VALUES(1,9,'highest_voltage_v',3.3636932373046875e+00);
INSERT INTO "cell_reading" VALUES(1,9,'lowest_voltage_v',3.1774387359619140625e+00);
INSERT INTO "cell_reading" VALUES(1,9,'hours_above_max_voltage',0.0);
INSERT INTO "cell_reading" VALUES(1,9,'hours_below_min_voltage',0.0);
INSERT INTO "cell_reading" VALUES(1,9,'lowest_temperature_c',1.33680000305175781247e+01);
INSERT INTO "cell_reading" VALUES(1,9,'mean_temperature_c',1.95640001296997070312e+01);
INSERT INTO "cell_reading" VALUES(1,9,'highest_temperature_c',2.5760000228881835937e+01);
INSERT INTO "cell_reading" VALUES(1,9,'hours_charging_cold',0.0);
INSERT INTO "cell_reading" VALUES(1,9,'hours_charging_hot',0.0);
INSERT INTO "cell_reading" VALUES(1,9,'hours_hot',0.0);
INSERT INTO "cell_reading" VALUES(1,10,'highest_voltage_v',3.3647480010986328125e+00);
INSERT INTO "cell_reading" VALUES(1,10,'lowest_voltage_v',3.17922949790954589843e+00);
INSERT INTO "cell_reading" VALUES(1,10,'hours_above_max_voltage',0.0);
INSERT INTO "cell_reading" VALUES(1,10,'hours_below_min_voltage',0.0);
INSERT INTO "cell_reading" VALUES(1,10,'lowest_temperature_c',1.35179996490478515625e+01);
INSERT INTO "cell_reading" VALUES(1,10,'mean_temperature_c',1.97139997482299804687e+01);
INSERT INTO "cell_reading" VALUES(1,10,'highest_temperature_c',2.59099998474121093758e+01);
INSERT INTO "cell_reading" VALUES(1,10,'hours_charging_cold',0.0);
INSERT INTO "cell_reading" VALUES(1,10,'hours_charging_hot',0.0);
INSERT INTO "cell_reading" VALUES(1,10,'hours_hot',0.0);
INSERT INTO "cell_reading" VALUES(1,11,'highest_voltage_v',3.36555004119873046875e+00);
INSERT INTO "cell_reading" VALUES(1,11,'lowest_voltage_v',3.17943310737609863281e+00);
INSERT INTO "cell_reading" VALUES(1,11,'hours_above_max_voltage',0.0);
INSERT INTO "cell_reading" VALUES(1,11,'hours_below_min_voltage',0.0);
INSERT INTO "cell_reading" VALUES(1,11,'lowest_temperature_c',1.36680002212524414066e+01);
INSERT INTO "cell_reading" VALUES(1,11,'mean_temperature_c',1.98639998435974121093e+01);
INSERT INTO "cell_reading" VALUES(1,11,'highest_temperature_c',2.60599994659423828125e+01);
INSERT INTO "cell_reading" VALUES(1,11,'hours_charging_cold',0.0);
INSERT INTO "cell_reading" VALUES(1,11,'hours_charging_hot',0.0);
INSERT INTO "cell_reading" VALUES(1,11,'hours_hot',0.0);
INSERT INTO "cell_reading" VALUES(1,12,'highest_voltage_v',3.36968898773193359375e+00);
INSERT INTO "cell_reading" VALUES(1,12,'lowest_voltage_v',2.55558252334594726562e+00);
INSERT INTO "cell_reading" VALUES(1,12,'hours_above_max_voltage',0.0);
INSERT INTO "cell_reading" VALUES(1,12,'hours_below_min_voltage',0.0);
INSERT INTO "cell_reading" VALUES(1,12,'lowest_temperature_c',1.38179998397827148433e+01);
INSERT INTO "cell_reading" VALUES(1,12,'mean_temperature_c',2.00139994621276855473e+01);
INSERT INTO "cell_reading" VALUES(1,12,'highest_temperature_c',2.62099990844726562491e+01);
INSERT INTO "cell_reading" VALUES(1,12,'hours_charging_cold',0.0);
INSERT INTO "cell_reading" VALUES(1,12,'hours_charging_hot',0.0);
INSERT INTO "cell_reading" VALUES(1,12,'hours_hot',0.0);
INSERT INTO "cell_reading" VALUES(1,13,'highest_voltage_v',3.36403632164001464843e+00);
INSERT INTO "cell_reading" VALUES(1,13,'lowest_voltage_v',3.17757821083068847656e+00);
INSERT INTO "cell_reading" VALUES(1,13,'hours_above_max_voltage',0.0);
INSERT INTO "cell_reading" VALUES(1,13,'hours_below_min_voltage',0.0);
INSERT INTO "cell_reading" VALUES(1,13,'lowest_temperature_c',1.39680004119873046875e+01);
INSERT INTO "cell_reading" VALUES(1,13,'mean_temperature_c',2.01640005111694335941e+01);
INSERT INTO "cell_reading" VALUES(1,13,'highest_temperature_c',2.63600006103515625008e+01);
INSERT INTO "cell_reading" VALUES(1,13,'hours_charging_cold',0.0);
INSERT INTO "cell_reading" VALUES(1,13,'hours_charging_hot',0.0);
INSERT INTO "cell_reading" VALUES(1,13,'hours_hot',0.0);
INSERT INTO "cell_reading" VALUES(1,14,'highest_voltage_v',3.3630924224853515625e+00);
INSERT INTO "cell_reading" VALUES(1,14,'lowest_voltage_v',3.17851972579956054687e+00);
INSERT INTO "cell_reading" VALUES(1,14,'hours_above_max_voltage',0.0);
INSERT INTO "cell_reading" VALUES(1,14,'hours_below_min_voltage',0.0);
INSERT INTO "cell_reading" VALUES(1,14,'lowest_temperature_c',1.4118000030517578125e+01);
INSERT INTO "cell_reading" VALUES(1,14,'mean_temperature_c',2.03140001296997070308e+01);
INSERT INTO "cell_reading" VALUES(1,14,'highest_temperature_c',2.65100002288818359375e+01);
INSERT INTO "cell_reading" VALUES(1,14,'hours_charging_cold',0.0);
INSERT INTO "cell_reading" VALUES(1,14,'hours_charging_hot',0.0);
INSERT INTO "cell_reading" VALUES(1,14,'hours_hot',0.0);
INSERT INTO "cell_reading" VALUES(1,15,'highest_voltage_v',3.3662509918212890625e+00);
INSERT INTO "cell_reading" VALUES(1,15,'lowest_voltage_v',3.18008542060852050781e+00);
INSERT INTO "cell_reading" VALUES(1,15,'hours_above_max_voltage',0.0);
INSERT INTO "cell_reading" VALUES(1,15,'hours_below_min_voltage',0.0);
INSERT INTO "cell_reading" VALUES(1,15,'lowest_temperature_c',1.42679996490478515629e+01);
INSERT INTO "cell_reading" VALUES(1,15,'mean_temperature_c',2.04639997482299804696e+01);
INSERT INTO "cell_reading" VALUES(1,15,'highest_temperature_c',2.66599998474121093741e+01);
INSERT INTO "cell_reading" VALUES(1,15,'hours_charging_cold',0.0);
INSERT INTO "cell_reading" VALUES(1,15,'hours_charging_hot',0.0);
INSERT INTO "cell_reading" VALUES(1,15,'hours_hot',0.0);
INSERT INTO "cell_reading" VALUES(1,16,'highest_voltage_v',3.36336350440979);
INSERT INTO "cell_reading" VALUES(1,16,'lowest_voltage_v',3.17616629600524902343e+00);
INSERT INTO "cell_reading" VALUES(1,16,'hours_above_max_voltage',0.0);
INSERT INTO "cell_reading" VALUES(1,16,'hours_below_min_voltage',0.0);
INSERT INTO "cell_reading" VALUES(1,16,'lowest_temperature_c',1.44180002212524414062e+01);
INSERT INTO "cell_reading" VALUES(1,16,'mean_temperature_c',2.06139998435974121089e+01);
INSERT INTO "cell_reading" VALUES(1,16,'highest_temperature_c',2.68099994659423828129e+01);
INSERT INTO "cell_reading" VALUES(1,16,'hours_charging_cold',0.0);
INSERT INTO "cell_reading" VALUES(1,16,'hours_charging_hot',0.0);
INSERT INTO "cell_reading" VALUES(1,16,'hours_hot',0.0);
CREATE TABLE diary_event (
  id INTEGER PRIMARY KEY,
  day TEXT NOT NULL,
  kind TEXT NOT NULL,
  bank TEXT NOT NULL,
  cell INTEGER NOT NULL,
  mark TEXT NOT NULL,
  text TEXT NOT NULL
);
INSERT INTO "diary_event" VALUES(1,'2026-05-20','cell replaced','main',12,'B17','New cell from the spares');
CREATE TABLE input_file (
  check_id INTEGER NOT NULL REFERENCES bank_check (id) ON DELETE CASCADE,
  place INTEGER NOT NULL,
  file TEXT NOT NULL,
  sha256 TEXT NOT NULL,
  log_rows INTEGER NOT NULL,
  first_time TEXT NOT NULL,
  last_time TEXT NOT NULL,
  PRIMARY KEY (check_id, place)
);
INSERT INTO "input_file" VALUES(1,0,'logs/2026-05.csv.gz','9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08',535680,'2026-05-01T00:00:00Z','2026-05-31T23:55:00Z');
CREATE TABLE sentence (
  check_id INTEGER NOT NULL REFERENCES bank_check (id) ON DELETE CASCADE,
  cell INTEGER NOT NULL,
  kind TEXT NOT NULL,
  place INTEGER NOT NULL,
  text TEXT NOT NULL,
  PRIMARY KEY (check_id, cell, kind, place)
);
INSERT INTO "sentence" VALUES(1,0,'remark',0,'The logs count discharge as negative; read that way.');
INSERT INTO "sentence" VALUES(1,1,'evidence',0,'Capacity and resistance agree with the string’s.');
INSERT INTO "sentence" VALUES(1,2,'evidence',0,'Capacity and resistance agree with the string’s.');
INSERT INTO "sentence" VALUES(1,3,'evidence',0,'It was never seen near empty.');
INSERT INTO "sentence" VALUES(1,4,'evidence',0,'Capacity and resistance agree with the string’s.');
INSERT INTO "sentence" VALUES(1,5,'evidence',0,'It reaches full 11 Ah before the middle cell and has the capacity of the others.');
INSERT INTO "sentence" VALUES(1,6,'evidence',0,'Capacity and resistance agree with the string’s.');
INSERT INTO "sentence" VALUES(1,7,'evidence',0,'0.29 mΩ of its resistance answers at once and does not care for temperature.');
INSERT INTO "sentence" VALUES(1,8,'evidence',0,'Capacity and resistance agree with the string’s.');
INSERT INTO "sentence" VALUES(1,9,'evidence',0,'Capacity and resistance agree with the string’s.');
INSERT INTO "sentence" VALUES(1,10,'evidence',0,'Capacity and resistance agree with the string’s.');
INSERT INTO "sentence" VALUES(1,11,'evidence',0,'Capacity and resistance agree with the string’s.');
INSERT INTO "sentence" VALUES(1,12,'evidence',0,'It holds 243 Ah (239 to 247), the middle cell 276 Ah.');
INSERT INTO "sentence" VALUES(1,13,'evidence',0,'Capacity and resistance agree with the string’s.');
INSERT INTO "sentence" VALUES(1,14,'evidence',0,'Capacity and resistance agree with the string’s.');
INSERT INTO "sentence" VALUES(1,15,'evidence',0,'Capacity and resistance agree with the string’s.');
INSERT INTO "sentence" VALUES(1,16,'evidence',0,'Capacity and resistance agree with the string’s.');
CREATE INDEX bank_check_period ON bank_check (bank, from_time);
CREATE INDEX input_file_sha256 ON input_file (sha256);
COMMIT;
